"""``python -m tests.bench`` from the root of the tree: measure, print the table, write the page and its picture.

Names of parts after it (``http core``) measure and print only those.
"""

import sys

from .report import main

if __name__ == "__main__":
    main(sys.argv[1:])
