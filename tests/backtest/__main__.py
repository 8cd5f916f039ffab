"""``python -m tests.backtest`` from the root of the tree: print the back-test and write its page."""

from .report import main

if __name__ == "__main__":
    main()
