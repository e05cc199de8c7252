"""Rules about single runs of wire and the leads of lights; they know nothing of the wiring of supplies."""
