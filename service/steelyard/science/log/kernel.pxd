# The types of kernel.py, for a compiler; nothing else is said here.

cpdef long walk_forward(
    double[::1] columns, double[::1] settings, double[::1] start, double[::1] steps, double[::1] work, long days
)
cpdef long walk_on(
    double[::1] columns, double[::1] settings, double[::1] steps, double[::1] work, long held, long days
)
cdef void _split_by_break(
    double[::1] columns, double[::1] settings, double[::1] work, long origin, long other, long at
) noexcept
cdef void _break(
    double[::1] columns, double[::1] settings, double[::1] work, long origin, long at
) noexcept
cdef void _load_weighing(double[::1] columns, long at, double[::1] room, long into) noexcept
cdef long _keep_likeliest(
    double[::1] settings, double[::1] steps, double[::1] work, long made, long into
) noexcept
cdef long _alike(double[::1] steps, double[::1] work, long into, long held, long origin) noexcept
cdef long _weigh(
    double[::1] columns, double[::1] settings, double[::1] work, long origin, long at, long day, double beyond,
    long made
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
cdef void _back_to_morning(double[::1] columns, double[::1] settings, double[::1] room, long at) noexcept
cdef void _look(
    double[::1] columns, double[::1] settings, double[::1] steps, double[::1] room, long origin, long at,
    double[::1] view, long out
) noexcept
cdef void _back_over_balance(
    double[::1] columns, double[::1] steps, double[::1] room, long origin, long at
) noexcept
cdef void _back_over_weighing(
    double[::1] columns, double[::1] settings, double[::1] steps, double[::1] room, long origin, long at
) noexcept
cdef void _times(double[::1] of, long matrix, double[::1] room, long vector, long into) noexcept
cpdef double load(
    double[::1] columns, double[::1] settings, long at, double tissue, double[::1] room, long into
) noexcept
cpdef show_forward(
    double[::1] columns, double[::1] settings, double[::1] steps, long days, double shift,
    double[::1] shown, double[::1] room
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
cpdef lay_out(
    double[::1] plan, double[::1] intake, double[::1] acting, double[::1] is_logged, double[::1] carried,
    double[::1] slope, long days, double[::1] columns
)
cdef double _shift_of(double[::1] intake, long first, long day) noexcept
