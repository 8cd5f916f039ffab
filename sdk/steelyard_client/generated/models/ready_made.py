from enum import StrEnum


class ReadyMade(StrEnum):
    FAST_GAIN_LONG_CUT = "fast_gain_long_cut"
    FAST_GAIN_REPEATED_MINI_CUTS = "fast_gain_repeated_mini_cuts"
    SLOW_GAIN_NO_CUT = "slow_gain_no_cut"
    SLOW_GAIN_RARE_MINI_CUTS = "slow_gain_rare_mini_cuts"

    def __str__(self) -> str:
        return str(self.value)
