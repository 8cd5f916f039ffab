# cython: language_level=3, boundscheck=True, wraparound=True, cdivision=False, infer_types=True
import math as _math
cimport cython as _cython
from array import array as _array
from cpython.buffer cimport (
    PyBUF_SIMPLE, PyBUF_WRITABLE, PyBuffer_FillInfo, PyBuffer_Release, PyObject_GetBuffer
)
from cpython.mem cimport PyMem_Free, PyMem_Realloc
from libc.string cimport memcpy
from libc.math cimport INFINITY as _INFINITY, exp as _c_exp, fabs, log as _c_log, sqrt as _c_sqrt, tanh as _c_tanh

# Beyond what C and Python have in common Python's own functions answer, with Python's errors.
cdef inline double _exp(double x) except? -1.0:
    return _c_exp(x) if -700.0 < x < 700.0 else _math.exp(x)

cdef inline double _log(double x) except? -1.0:
    return _c_log(x) if 0.0 < x < 1e300 else _math.log(x)

cdef inline double _sqrt(double x) except? -1.0:
    return _c_sqrt(x) if x >= 0.0 else _math.sqrt(x)

cdef inline double _tanh(double x) except? -1.0:
    return _c_tanh(x)

cdef inline double _maximum(double a, double b) except? -1.0:
    return b if b > a else a

cdef inline double _minimum(double a, double b) except? -1.0:
    return b if b < a else a

cdef inline double _number(x) except? -1.0:
    return x

# A number of a named tuple, by its place.
cdef inline double _field(row, Py_ssize_t place) except? -1.0:
    if not isinstance(row, tuple):
        raise TypeError("not a named tuple")
    return (<tuple>row)[place]

cdef class Rows:
    """Rows of equally many doubles: what is a list of tuples in the core, without an object for every number."""
    cdef double* data
    cdef Py_ssize_t width, count, room

    def __cinit__(self, Py_ssize_t width):
        self.width, self.count, self.room, self.data = width, 0, 0, NULL

    def __dealloc__(self):
        PyMem_Free(self.data)

    cdef double* grow(self) except NULL:
        if self.count == self.room:
            self.room = 2 * self.room + 32
            larger = <double*>PyMem_Realloc(self.data, self.room * self.width * sizeof(double))
            if larger == NULL:
                raise MemoryError
            self.data = larger
        self.count += 1
        return self.data + (self.count - 1) * self.width

    cdef double* at(self, Py_ssize_t row) except NULL:
        if row < 0:
            row += self.count
        if not 0 <= row < self.count:
            raise IndexError(row)
        return self.data + row * self.width

    def reverse(self):
        cdef Py_ssize_t i, low = 0, high = self.count - 1
        while low < high:
            for i in range(self.width):
                self.data[low * self.width + i], self.data[high * self.width + i] = (
                    self.data[high * self.width + i], self.data[low * self.width + i]
                )
            low += 1
            high -= 1

    def __len__(self):
        return self.count

    def __getitem__(self, Py_ssize_t row):
        values = self.at(row)
        return tuple([values[i] for i in range(self.width)])

cdef class Column:
    """Doubles: what is a list of numbers in the core, without an object for each. From outside, it is read like one."""
    cdef double* data
    cdef Py_ssize_t count, room, lent

    def __dealloc__(self):
        PyMem_Free(self.data)

    cdef inline int append(self, double value) except -1:
        if self.count == self.room:
            self.take_room(2 * self.room + 64)
        self.data[self.count] = value
        self.count += 1
        return 0

    cdef int take_room(self, Py_ssize_t room) except -1:
        if self.lent:
            raise BufferError("somebody reads the doubles of this column as bytes")
        larger = <double*>PyMem_Realloc(self.data, room * sizeof(double))
        if larger == NULL:
            raise MemoryError
        self.data, self.room = larger, room
        return 0

    def __getbuffer__(self, Py_buffer* buffer, int flags):
        """The doubles as bytes, to read."""
        if flags & PyBUF_WRITABLE:
            raise BufferError("the doubles of a column are not for writing")
        PyBuffer_FillInfo(buffer, self, self.data, self.count * sizeof(double), 1, flags)
        self.lent += 1

    def __releasebuffer__(self, Py_buffer* buffer):
        self.lent -= 1

    cdef inline double* at(self, Py_ssize_t row) except NULL:
        if row < 0:
            row += self.count
        if not 0 <= row < self.count:
            raise IndexError(row)
        return self.data + row

    def reverse(self):
        cdef Py_ssize_t low = 0, high = self.count - 1
        while low < high:
            self.data[low], self.data[high] = self.data[high], self.data[low]
            low += 1
            high -= 1

    def __len__(self):
        return self.count

    def __getitem__(self, row):
        cdef Py_ssize_t i
        if isinstance(row, slice):
            return [self.data[i] for i in range(*row.indices(self.count))]
        return self.at(row)[0]

    def __eq__(self, other):
        return list(self) == list(other) if isinstance(other, Column | list) else NotImplemented

    def __repr__(self):
        return repr(list(self))

cdef Column _column_of(values):
    """``values`` as a column, whichever they are; None stays."""
    cdef Py_buffer buffer
    if values is None or isinstance(values, Column):
        return values
    made = Column()
    if type(values) is _array and values.typecode == "d" and len(values):
        made.take_room(len(values))
        PyObject_GetBuffer(values, &buffer, PyBUF_SIMPLE)
        memcpy(made.data, buffer.buf, buffer.len)
        PyBuffer_Release(&buffer)
        made.count = made.room
        return made
    for value in values:
        made.append(value)
    return made

cdef Column _column_repeated(double value, Py_ssize_t times):
    made = Column()
    for _ in range(times):
        made.append(value)
    return made

cdef Rows _rows_of(steps, Py_ssize_t least, bint may_have_more):
    """``steps`` as rows, whichever they are, each of ``least`` numbers, or more where it may have more."""
    cdef Rows made
    if isinstance(steps, Rows):
        made = steps
    else:
        made = Rows(len(steps[0]) if len(steps) else least)
        for step in steps:
            if len(step) != made.width:
                raise ValueError("rows of different lengths")
            to = made.grow()
            for i in range(made.width):
                to[i] = step[i]
    if made.width < least or (made.width > least and not may_have_more):
        raise ValueError(f"a row of {made.width} numbers where {least} are read")
    return made
