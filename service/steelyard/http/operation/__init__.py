"""What an operation is, and how one becomes a route."""
