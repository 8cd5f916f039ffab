"""``python -m tests.logstudy`` from the root of the tree: print the study of the log reader and write its page."""

import sys
from pathlib import Path

if __package__ == "tests.logstudy":
    sys.path[:0] = [str(Path(__file__).resolve().parents[2] / part) for part in ("service", "sdk", "tests")]

from logstudy.report import main

if __name__ == "__main__":
    main()
