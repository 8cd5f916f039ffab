from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, TypeVar, cast

from attrs import define as _attrs_define
from attrs import field as _attrs_field

if TYPE_CHECKING:
    from ..models.beat_chance import BeatChance
    from ..models.compared_strategy import ComparedStrategy
    from ..models.note import Note
    from ..models.refused_strategy import RefusedStrategy
    from ..models.season_start import SeasonStart
    from ..models.state import State


T = TypeVar("T", bound="ComparisonResponse")


@_attrs_define
class ComparisonResponse:
    """Strategies side by side on the same body and the same draws of uncertainty.

    Attributes:
        cautions (list[Note]):
        chances (list[BeatChance]): The chances of each strategy against each other one.
        contract_version (str): Version of the contract.
        draws (int): Draws of the sources of uncertainty, the same for all.
        fingerprint (str): Digest of the input, the contract and the model version.
        methods (list[str]): Ids of the equations, constants and rules used; each is in `/v1/methods`.
        model_version (str): Version of the science.
        refused (list[RefusedStrategy]): Strategies that a rule refuses.
        start (SeasonStart): What the season starts from.
        state (State): What is known of a person on a day, each figure with its error. Send it with the next request, as
            it is, beside
            the same `profile`: it takes the place of the profile's weight and body fat, of the log so far and of the phase,
            so
            that only what was logged since need be sent. Nothing of it is kept by the service.
        strategies (list[ComparedStrategy]):
    """

    cautions: list[Note]
    chances: list[BeatChance]
    contract_version: str
    draws: int
    fingerprint: str
    methods: list[str]
    model_version: str
    refused: list[RefusedStrategy]
    start: SeasonStart
    state: State
    strategies: list[ComparedStrategy]
    additional_properties: dict[str, Any] = _attrs_field(
        init=False, factory=dict, repr=False
    )

    def to_dict(self) -> dict[str, Any]:
        cautions = []
        for cautions_item_data in self.cautions:
            cautions_item = cautions_item_data.to_dict()
            cautions.append(cautions_item)

        chances = []
        for chances_item_data in self.chances:
            chances_item = chances_item_data.to_dict()
            chances.append(chances_item)

        contract_version = self.contract_version

        draws = self.draws

        fingerprint = self.fingerprint

        methods = self.methods

        model_version = self.model_version

        refused = []
        for refused_item_data in self.refused:
            refused_item = refused_item_data.to_dict()
            refused.append(refused_item)

        start = self.start.to_dict()

        state = self.state.to_dict()

        strategies = []
        for strategies_item_data in self.strategies:
            strategies_item = strategies_item_data.to_dict()
            strategies.append(strategies_item)

        field_dict: dict[str, Any] = {}
        field_dict.update(self.additional_properties)
        field_dict.update(
            {
                "cautions": cautions,
                "chances": chances,
                "contract_version": contract_version,
                "draws": draws,
                "fingerprint": fingerprint,
                "methods": methods,
                "model_version": model_version,
                "refused": refused,
                "start": start,
                "state": state,
                "strategies": strategies,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.beat_chance import BeatChance  # noqa: PLC0415
        from ..models.compared_strategy import ComparedStrategy  # noqa: PLC0415
        from ..models.note import Note  # noqa: PLC0415
        from ..models.refused_strategy import RefusedStrategy  # noqa: PLC0415
        from ..models.season_start import SeasonStart  # noqa: PLC0415
        from ..models.state import State  # noqa: PLC0415

        d = dict(src_dict)
        cautions = []
        _cautions = d.pop("cautions")
        for cautions_item_data in _cautions:
            cautions_item = Note.from_dict(cautions_item_data)

            cautions.append(cautions_item)

        chances = []
        _chances = d.pop("chances")
        for chances_item_data in _chances:
            chances_item = BeatChance.from_dict(chances_item_data)

            chances.append(chances_item)

        contract_version = d.pop("contract_version")

        draws = d.pop("draws")

        fingerprint = d.pop("fingerprint")

        methods = cast(list[str], d.pop("methods"))

        model_version = d.pop("model_version")

        refused = []
        _refused = d.pop("refused")
        for refused_item_data in _refused:
            refused_item = RefusedStrategy.from_dict(refused_item_data)

            refused.append(refused_item)

        start = SeasonStart.from_dict(d.pop("start"))

        state = State.from_dict(d.pop("state"))

        strategies = []
        _strategies = d.pop("strategies")
        for strategies_item_data in _strategies:
            strategies_item = ComparedStrategy.from_dict(strategies_item_data)

            strategies.append(strategies_item)

        comparison_response = cls(
            cautions=cautions,
            chances=chances,
            contract_version=contract_version,
            draws=draws,
            fingerprint=fingerprint,
            methods=methods,
            model_version=model_version,
            refused=refused,
            start=start,
            state=state,
            strategies=strategies,
        )

        comparison_response.additional_properties = d
        return comparison_response

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
