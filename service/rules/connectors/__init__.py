"""Rules about ports, plugs, contacts and adapters on the way to a device; they know nothing of rails as a whole."""
