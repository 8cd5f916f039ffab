"""``python -m tests.bench`` from the root of the tree: measure, print the table, write the page and its picture."""

from .report import main

if __name__ == "__main__":
    main()
