"""All that a rule is shown: build, demand, plan, rails and mains at one end of every range; it judges nothing."""
