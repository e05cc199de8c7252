"""Rules about cables as such: whose they are and how far they reach; they know nothing of amps."""
