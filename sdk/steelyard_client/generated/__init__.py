"""Generated from the contract by regenerate.py: do not edit."""
