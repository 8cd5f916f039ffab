"""One module a resource: decode, call an answer, encode."""
