"""The gate before every route: keys, scopes, limits, quotas, and the count of use."""
