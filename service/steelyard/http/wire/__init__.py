"""What stands on the wire: encoding, decoding, problems, negotiation, headers and caching."""
