"""Facets of a thing: each computed once, when it is first asked for."""

from functools import cached_property
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    facet = cached_property
else:

    class facet(cached_property):  # noqa: N801 - used as the built-in decorators are
        """``cached_property`` without its lock, taken each time in Python 3.11: a request has its things to itself."""

        def __get__(self, instance: Any, owner: Any = None) -> Any:
            if instance is None:
                return self
            value = vars(instance)[self.attrname] = self.func(instance)
            return value
