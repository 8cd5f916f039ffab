"""A study of reviews: simulated members who do what they are told, against the plan alone and a coach's rule."""
