"""The HTTP layer: decode, call the core, encode."""
