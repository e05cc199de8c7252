"""The name of the standby rail, which lives while all others are off."""

STANDBY = "5vsb"
