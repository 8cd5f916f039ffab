"""The wire format: one msgspec struct per JSON object, one module per resource."""
