"""Rules about the supply, its rails, short moments, warmth and mains; they know nothing of plugs and wires."""
