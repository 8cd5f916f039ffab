"""Pages and documents about the service: reference, guides, science, workbench, the contract."""
