"""The back-test of the forecast's uncertainty on simulated people."""
