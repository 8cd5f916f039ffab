# JSON of columns, for the encoder of answers. It stands in this module because only C code of the same module reaches a
# column's doubles without an object for each, which is what makes it worth having.
from cpython.mem cimport PyMem_Malloc
from libc.math cimport signbit

cdef Py_ssize_t _LONGEST = 16  # ",-999999999.9999"

@_cython.cdivision(True)
cdef inline char* _digits(char* to, unsigned int number, int least):
    """Write the digits of a number, at least so many; return where they end."""
    cdef int count = least
    cdef unsigned int bound = 1
    cdef int i
    for i in range(least):
        bound *= 10
    while number >= bound and count < 10:
        bound *= 10
        count += 1
    for i in range(count - 1, -1, -1):
        to[i] = 48 + number % 10
        number = number // 10
    return to + count

@_cython.cdivision(True)
def json_array(Column column):
    """The numbers of a column as a JSON array, each with as many digits as tell it apart, as ``json.dumps`` has them.

    For numbers of at most four decimals under a billion, of which an answer's columns are made; None where any
    is something else. A number's decimals are then those of a whole number, which takes a quarter of the time of
    finding the shortest that tell any number apart.
    """
    cdef Py_ssize_t i
    cdef double size
    cdef unsigned long long whole
    cdef unsigned int decimals
    cdef int count
    cdef char* text = <char*>PyMem_Malloc(_LONGEST * column.count + 2)
    cdef char* to = text
    if text == NULL:
        raise MemoryError
    try:
        to[0] = b"["
        to += 1
        for i in range(column.count):
            size = fabs(column.data[i])
            if not size < 1e9:
                return None
            whole = <unsigned long long>(size * 1e4 + 0.5)
            if whole / 1e4 != size:
                return None
            if i:
                to[0] = b","
                to += 1
            if signbit(column.data[i]):
                to[0] = b"-"
                to += 1
            to = _digits(to, whole // 10000, 1)
            to[0] = b"."
            decimals, count = whole % 10000, 4
            while count > 1 and decimals % 10 == 0:
                decimals = decimals // 10
                count -= 1
            to = _digits(to + 1, decimals, count)
        to[0] = b"]"
        return text[: to + 1 - text]
    finally:
        PyMem_Free(text)
