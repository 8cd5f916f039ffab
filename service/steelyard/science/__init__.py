"""The domain core: pure functions over plain floats or numpy arrays.

No input or output, no clock, no random source, no web imports (a test keeps it so).
"""
