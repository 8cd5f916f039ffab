"""Request examples of the contract: invented people. The tests send each of them."""
