from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, TypeVar, cast

from attrs import define as _attrs_define

from ..models.condition import Condition
from ..models.eating_disorder import EatingDisorder
from ..models.medicine import Medicine
from ..types import UNSET, Unset

if TYPE_CHECKING:
    from ..models.clinical_clearance import ClinicalClearance


T = TypeVar("T", bound="Screening")


@_attrs_define
class Screening:
    """Safety questions. A deficit is planned only when they are answered: unknown is never clear.

    Attributes:
        conditions (list[Condition]): Conditions that apply; empty for none.
        eating_disorder (EatingDisorder): Eating disorder, now or before.
        is_breastfeeding (bool): Breastfeeding now.
        is_pregnant (bool): Pregnant now.
        medicines (list[Medicine]): Medicines taken; empty for none.
        clinical_clearance (ClinicalClearance | None | Unset): A professional's clearance, where one was given.
    """

    conditions: list[Condition]
    eating_disorder: EatingDisorder
    is_breastfeeding: bool
    is_pregnant: bool
    medicines: list[Medicine]
    clinical_clearance: ClinicalClearance | None | Unset = UNSET

    def to_dict(self) -> dict[str, Any]:
        from ..models.clinical_clearance import ClinicalClearance  # noqa: PLC0415

        conditions = []
        for conditions_item_data in self.conditions:
            conditions_item = conditions_item_data.value
            conditions.append(conditions_item)

        eating_disorder = self.eating_disorder.value

        is_breastfeeding = self.is_breastfeeding

        is_pregnant = self.is_pregnant

        medicines = []
        for medicines_item_data in self.medicines:
            medicines_item = medicines_item_data.value
            medicines.append(medicines_item)

        clinical_clearance: dict[str, Any] | None | Unset
        if isinstance(self.clinical_clearance, Unset):
            clinical_clearance = UNSET
        elif isinstance(self.clinical_clearance, ClinicalClearance):
            clinical_clearance = self.clinical_clearance.to_dict()
        else:
            clinical_clearance = self.clinical_clearance

        field_dict: dict[str, Any] = {}

        field_dict.update(
            {
                "conditions": conditions,
                "eating_disorder": eating_disorder,
                "is_breastfeeding": is_breastfeeding,
                "is_pregnant": is_pregnant,
                "medicines": medicines,
            }
        )
        if clinical_clearance is not UNSET:
            field_dict["clinical_clearance"] = clinical_clearance

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.clinical_clearance import ClinicalClearance  # noqa: PLC0415

        d = dict(src_dict)
        conditions = []
        _conditions = d.pop("conditions")
        for conditions_item_data in _conditions:
            conditions_item = Condition(conditions_item_data)

            conditions.append(conditions_item)

        eating_disorder = EatingDisorder(d.pop("eating_disorder"))

        is_breastfeeding = d.pop("is_breastfeeding")

        is_pregnant = d.pop("is_pregnant")

        medicines = []
        _medicines = d.pop("medicines")
        for medicines_item_data in _medicines:
            medicines_item = Medicine(medicines_item_data)

            medicines.append(medicines_item)

        def _parse_clinical_clearance(data: object) -> ClinicalClearance | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            try:
                if not isinstance(data, dict):
                    raise TypeError()
                clinical_clearance_type_0 = ClinicalClearance.from_dict(data)

                return clinical_clearance_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            return cast(ClinicalClearance | None | Unset, data)

        clinical_clearance = _parse_clinical_clearance(
            d.pop("clinical_clearance", UNSET)
        )

        screening = cls(
            conditions=conditions,
            eating_disorder=eating_disorder,
            is_breastfeeding=is_breastfeeding,
            is_pregnant=is_pregnant,
            medicines=medicines,
            clinical_clearance=clinical_clearance,
        )

        return screening
