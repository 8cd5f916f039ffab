from __future__ import annotations

import datetime
from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, TypeVar, cast

from attrs import define as _attrs_define

from ..types import UNSET, Unset

if TYPE_CHECKING:
    from ..models.account_as_read import AccountAsRead
    from ..models.body_as_read import BodyAsRead
    from ..models.steps_as_read import StepsAsRead


T = TypeVar("T", bound="ReadSoFar")


@_attrs_define
class ReadSoFar:
    """What was read of the log before its first entry here. Hand it on as it is; nothing in it is meant to be edited.

    Without `accounts` nothing was read before, and only the body counts.

        Attributes:
            body (BodyAsRead): The body that the first reading of the log took, kept so that nothing drifts by being handed
                on.
            accounts (list[AccountAsRead] | Unset): The explanations held. `[]` if absent.
            carbohydrate_kcal (list[float | None] | Unset): Energy of carbohydrate on the same days, where it was logged.
                `[]` if absent.
            date (datetime.date | None | Unset): The day up to which weights are counted.
            days (int | Unset): Days read before. `0` if absent.
            days_logged (int | Unset): Of them, days with an intake. `0` if absent.
            intakes (list[float | None] | Unset): Intakes of the days before that day, oldest first; null where none. `[]`
                if absent.
            noise_variance (float | Unset): Noise variance of a weighing, kg squared. `0` if absent.
            steps (None | StepsAsRead | Unset): Steps counted by then; null where none were.
    """

    body: BodyAsRead
    accounts: list[AccountAsRead] | Unset = UNSET
    carbohydrate_kcal: list[float | None] | Unset = UNSET
    date: datetime.date | None | Unset = UNSET
    days: int | Unset = UNSET
    days_logged: int | Unset = UNSET
    intakes: list[float | None] | Unset = UNSET
    noise_variance: float | Unset = UNSET
    steps: None | StepsAsRead | Unset = UNSET

    def to_dict(self) -> dict[str, Any]:
        from ..models.steps_as_read import StepsAsRead  # noqa: PLC0415

        body = self.body.to_dict()

        accounts: list[dict[str, Any]] | Unset = UNSET
        if not isinstance(self.accounts, Unset):
            accounts = []
            for accounts_item_data in self.accounts:
                accounts_item = accounts_item_data.to_dict()
                accounts.append(accounts_item)

        carbohydrate_kcal: list[float | None] | Unset = UNSET
        if not isinstance(self.carbohydrate_kcal, Unset):
            carbohydrate_kcal = []
            for carbohydrate_kcal_item_data in self.carbohydrate_kcal:
                carbohydrate_kcal_item: float | None
                carbohydrate_kcal_item = carbohydrate_kcal_item_data
                carbohydrate_kcal.append(carbohydrate_kcal_item)

        date: None | str | Unset
        if isinstance(self.date, Unset):
            date = UNSET
        elif isinstance(self.date, datetime.date):
            date = self.date.isoformat()
        else:
            date = self.date

        days = self.days

        days_logged = self.days_logged

        intakes: list[float | None] | Unset = UNSET
        if not isinstance(self.intakes, Unset):
            intakes = []
            for intakes_item_data in self.intakes:
                intakes_item: float | None
                intakes_item = intakes_item_data
                intakes.append(intakes_item)

        noise_variance = self.noise_variance

        steps: dict[str, Any] | None | Unset
        if isinstance(self.steps, Unset):
            steps = UNSET
        elif isinstance(self.steps, StepsAsRead):
            steps = self.steps.to_dict()
        else:
            steps = self.steps

        field_dict: dict[str, Any] = {}

        field_dict.update(
            {
                "body": body,
            }
        )
        if accounts is not UNSET:
            field_dict["accounts"] = accounts
        if carbohydrate_kcal is not UNSET:
            field_dict["carbohydrate_kcal"] = carbohydrate_kcal
        if date is not UNSET:
            field_dict["date"] = date
        if days is not UNSET:
            field_dict["days"] = days
        if days_logged is not UNSET:
            field_dict["days_logged"] = days_logged
        if intakes is not UNSET:
            field_dict["intakes"] = intakes
        if noise_variance is not UNSET:
            field_dict["noise_variance"] = noise_variance
        if steps is not UNSET:
            field_dict["steps"] = steps

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.account_as_read import AccountAsRead  # noqa: PLC0415
        from ..models.body_as_read import BodyAsRead  # noqa: PLC0415
        from ..models.steps_as_read import StepsAsRead  # noqa: PLC0415

        d = dict(src_dict)
        body = BodyAsRead.from_dict(d.pop("body"))

        _accounts = d.pop("accounts", UNSET)
        accounts: list[AccountAsRead] | Unset = UNSET
        if _accounts is not UNSET:
            accounts = []
            for accounts_item_data in _accounts:
                accounts_item = AccountAsRead.from_dict(accounts_item_data)

                accounts.append(accounts_item)

        _carbohydrate_kcal = d.pop("carbohydrate_kcal", UNSET)
        carbohydrate_kcal: list[float | None] | Unset = UNSET
        if _carbohydrate_kcal is not UNSET:
            carbohydrate_kcal = []
            for carbohydrate_kcal_item_data in _carbohydrate_kcal:

                def _parse_carbohydrate_kcal_item(data: object) -> float | None:
                    if data is None:
                        return data
                    return cast(float | None, data)

                carbohydrate_kcal_item = _parse_carbohydrate_kcal_item(
                    carbohydrate_kcal_item_data
                )

                carbohydrate_kcal.append(carbohydrate_kcal_item)

        def _parse_date(data: object) -> datetime.date | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            try:
                if not isinstance(data, str):
                    raise TypeError()
                date_type_0 = datetime.date.fromisoformat(data)

                return date_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            return cast(datetime.date | None | Unset, data)

        date = _parse_date(d.pop("date", UNSET))

        days = d.pop("days", UNSET)

        days_logged = d.pop("days_logged", UNSET)

        _intakes = d.pop("intakes", UNSET)
        intakes: list[float | None] | Unset = UNSET
        if _intakes is not UNSET:
            intakes = []
            for intakes_item_data in _intakes:

                def _parse_intakes_item(data: object) -> float | None:
                    if data is None:
                        return data
                    return cast(float | None, data)

                intakes_item = _parse_intakes_item(intakes_item_data)

                intakes.append(intakes_item)

        noise_variance = d.pop("noise_variance", UNSET)

        def _parse_steps(data: object) -> None | StepsAsRead | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            try:
                if not isinstance(data, dict):
                    raise TypeError()
                steps_type_0 = StepsAsRead.from_dict(data)

                return steps_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            return cast(None | StepsAsRead | Unset, data)

        steps = _parse_steps(d.pop("steps", UNSET))

        read_so_far = cls(
            body=body,
            accounts=accounts,
            carbohydrate_kcal=carbohydrate_kcal,
            date=date,
            days=days,
            days_logged=days_logged,
            intakes=intakes,
            noise_variance=noise_variance,
            steps=steps,
        )

        return read_so_far
