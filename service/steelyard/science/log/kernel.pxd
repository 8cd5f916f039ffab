# The types of kernel.py, for a compiler; nothing else is said here.
cdef long STATES, SLOTS, MEAN, SPREAD, GAIN, SURPRISE, PRECISION, WEIGHT, PARENT, EVENT, SHOCK_DAY, SHOCK_SIGN, NOISE
cdef long NOISE_WORTH, RECORD, WORK
cdef long PULL, GROWTH, BETA_DRIFT, ALPHA_DRIFT, WATER_KEPT, WATER_FRESH, LINGER_KEPT, LINGER_SHARE
cdef long NOISE_VARIANCE, ODDS_WRONG, WRONG_VARIANCE, ODDS_SHOCK, SHOCK_VARIANCE, SPLITS_FROM
cdef long AGAIN_DAYS, AGAIN_ODDS, DROPPED, BREAK_VARIANCE, NOISE_PRIOR, STAYS, ALPHA_LEAST, SETTLED, SETTINGS
cdef long COLUMNS, WEIGHED, SEEN, SCALE, INTAKE, INTAKE_VARIANCE, CARRIED, BY_ALPHA, BY_BETA, RISE, BREAKS
cdef long WATER, WATER_VARIANCE, RECENT, RECENT_VARIANCE, ACTIVITY, ACTIVITY_VARIANCE, BALANCED, BALANCE_VARIANCE
cdef long VIEW, TISSUE, LEVEL, BORNE, ALPHA, BETA, ALPHA_VARIANCE, BETA_VARIANCE, BOTH, HAPPENED, STRAY, SHOWN
cdef long ALPHA_MEAN, AMPLITUDE, REFERENCE, HELD_LOAD, SLOW_SHARE, SLOW_KEPT, ERROR_LOGGED, ERROR_UNLOGGED, SHIFT_FROM
cdef long SHIFT_APART, BREAK_ODDS, DEFICIT, DEFICIT_SPREAD, DEFICIT_DAYS, LOGGED_BEFORE, MEANT_FROM, ERROR_SILENT, DEFICIT_AGAIN, PLAN
cdef long RECENT_DAYS, SHIFT_DAYS, HABIT_DAYS, HABIT_LEAST
cdef double EMPTY

cpdef long walk_forward(
    double[::1] columns, double[::1] settings, double[::1] start, double[::1] steps, double[::1] work, long days
)
cpdef long walk_on(
    double[::1] columns, double[::1] settings, double[::1] steps, double[::1] work, long held, long days
)
cdef long _alike(double[::1] steps, double[::1] work, long into, long held, long origin) noexcept
cdef long _weigh(
    double[::1] columns, double[::1] settings, double[::1] work, long origin, long at, long day, long made
) noexcept
cdef long _split(
    double[::1] settings, double[::1] work, long origin, long made, long day, double sign, double surprise,
    double total, double odds, long state
) noexcept
cdef void _take_in(double[::1] settings, double[::1] work, long origin, double surprise, double total) noexcept
cdef void _learn(
    double[::1] settings, double[::1] work, long origin, long gain, double surprise, double total
) noexcept
cdef void _hold(double[::1] settings, double[::1] work, long origin) noexcept
cdef void _balance(
    double[::1] columns, double[::1] settings, double[::1] work, long origin, long at
) noexcept
cdef void _to_next_morning(
    double[::1] columns, double[::1] settings, double[::1] steps, double[::1] work, long origin, long slot, long at
) noexcept
cpdef walk_back(
    double[::1] columns, double[::1] settings, double[::1] steps, long days, long slot, double[::1] view,
    double[::1] room
)
cdef void _load(double[::1] columns, double[::1] settings, long at, double[::1] room, long into, double tissue) noexcept
cpdef show_forward(
    double[::1] columns, double[::1] settings, double[::1] steps, long days, double shift,
    double[::1] shown
)
cpdef add_back(
    double[::1] columns, double[::1] settings, double[::1] view, long days, double odds, double shift,
    double[::1] shown
)
cpdef settle_back(double[::1] shown, long days, double total)
cdef void _add_pace(
    double[::1] columns, double[::1] settings, long at, double[::1] shown, long days, long day, double odds,
    double alpha, double beta, double of_alpha, double of_beta, double of_both
) noexcept
cdef void _add(
    double[::1] shown, long row, long days, long day, double odds, double mean, double variance
) noexcept
cdef void _settle(double[::1] shown, long row, long days, long day, double total) noexcept
cdef double _level(double[::1] columns, double[::1] settings, long at, double[::1] steps, long origin) noexcept
cdef double _level_variance(double[::1] columns, double[::1] settings, long at, double[::1] steps, long origin) noexcept
cpdef lay_out(
    double[::1] plan, double[::1] intake, double[::1] acting, double[::1] is_logged, double[::1] carried,
    double[::1] slope, long days, double[::1] columns
)
