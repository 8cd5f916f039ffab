"""``python -m tests.loopstudy`` from the root of the tree: print the study of the closed loop and write its page."""

import sys
from pathlib import Path

if __package__ == "tests.loopstudy":
    sys.path[:0] = [str(Path(__file__).resolve().parents[2] / part) for part in ("service", "sdk", "tests")]

from loopstudy.report import main

if __name__ == "__main__":
    main()
