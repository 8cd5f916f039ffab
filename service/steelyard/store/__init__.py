"""The operator's store: organisations, hashed keys, usage. Nothing about members."""
