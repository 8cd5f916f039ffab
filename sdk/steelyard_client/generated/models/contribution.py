from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, TypeVar

from attrs import define as _attrs_define
from attrs import field as _attrs_field

if TYPE_CHECKING:
    from ..models.interval import Interval


T = TypeVar("T", bound="Contribution")


@_attrs_define
class Contribution:
    """What each kind of evidence says and how much it counted.

    Attributes:
        log_share (float): Share that rests on the log, 0 to 1.
        prior_kcal (Interval): A central value with the interval that holds the truth with probability ``coverage``.
        prior_share (float): Share of the answer that rests on them, 0 to 1.
    """

    log_share: float
    prior_kcal: Interval
    prior_share: float
    additional_properties: dict[str, Any] = _attrs_field(
        init=False, factory=dict, repr=False
    )

    def to_dict(self) -> dict[str, Any]:
        log_share = self.log_share

        prior_kcal = self.prior_kcal.to_dict()

        prior_share = self.prior_share

        field_dict: dict[str, Any] = {}
        field_dict.update(self.additional_properties)
        field_dict.update(
            {
                "log_share": log_share,
                "prior_kcal": prior_kcal,
                "prior_share": prior_share,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.interval import Interval  # noqa: PLC0415

        d = dict(src_dict)
        log_share = d.pop("log_share")

        prior_kcal = Interval.from_dict(d.pop("prior_kcal"))

        prior_share = d.pop("prior_share")

        contribution = cls(
            log_share=log_share,
            prior_kcal=prior_kcal,
            prior_share=prior_share,
        )

        contribution.additional_properties = d
        return contribution

    @property
    def additional_keys(self) -> list[str]:
        return list(self.additional_properties.keys())

    def __getitem__(self, key: str) -> Any:
        return self.additional_properties[key]

    def __setitem__(self, key: str, value: Any) -> None:
        self.additional_properties[key] = value

    def __delitem__(self, key: str) -> None:
        del self.additional_properties[key]

    def __contains__(self, key: str) -> bool:
        return key in self.additional_properties
