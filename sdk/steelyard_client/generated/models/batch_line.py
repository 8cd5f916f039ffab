from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, TypeVar

from attrs import define as _attrs_define

from ..models.batch_operation import BatchOperation

if TYPE_CHECKING:
    from ..models.body_composition_request import BodyCompositionRequest
    from ..models.decision_request import DecisionRequest
    from ..models.forecast_request import ForecastRequest
    from ..models.maintenance_request import MaintenanceRequest
    from ..models.plan_request import PlanRequest
    from ..models.review_request import ReviewRequest
    from ..models.trend_request import TrendRequest


T = TypeVar("T", bound="BatchLine")


@_attrs_define
class BatchLine:
    """One line in: an operation and its body, under a reference of the caller's choosing.

    Attributes:
        body (BodyCompositionRequest | DecisionRequest | ForecastRequest | MaintenanceRequest | PlanRequest |
            ReviewRequest | TrendRequest): The body that the operation takes when it is called by itself.
        operation (BatchOperation): The operations that a line may ask for: those that take one person.
        reference (str): Comes back with the answer.
    """

    body: (
        BodyCompositionRequest
        | DecisionRequest
        | ForecastRequest
        | MaintenanceRequest
        | PlanRequest
        | ReviewRequest
        | TrendRequest
    )
    operation: BatchOperation
    reference: str

    def to_dict(self) -> dict[str, Any]:
        from ..models.body_composition_request import BodyCompositionRequest  # noqa: PLC0415
        from ..models.decision_request import DecisionRequest  # noqa: PLC0415
        from ..models.forecast_request import ForecastRequest  # noqa: PLC0415
        from ..models.maintenance_request import MaintenanceRequest  # noqa: PLC0415
        from ..models.plan_request import PlanRequest  # noqa: PLC0415
        from ..models.trend_request import TrendRequest  # noqa: PLC0415

        body: dict[str, Any]
        if isinstance(self.body, BodyCompositionRequest):
            body = self.body.to_dict()
        elif isinstance(self.body, MaintenanceRequest):
            body = self.body.to_dict()
        elif isinstance(self.body, DecisionRequest):
            body = self.body.to_dict()
        elif isinstance(self.body, ForecastRequest):
            body = self.body.to_dict()
        elif isinstance(self.body, PlanRequest):
            body = self.body.to_dict()
        elif isinstance(self.body, TrendRequest):
            body = self.body.to_dict()
        else:
            body = self.body.to_dict()

        operation = self.operation.value

        reference = self.reference

        field_dict: dict[str, Any] = {}

        field_dict.update(
            {
                "body": body,
                "operation": operation,
                "reference": reference,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.body_composition_request import BodyCompositionRequest  # noqa: PLC0415
        from ..models.decision_request import DecisionRequest  # noqa: PLC0415
        from ..models.forecast_request import ForecastRequest  # noqa: PLC0415
        from ..models.maintenance_request import MaintenanceRequest  # noqa: PLC0415
        from ..models.plan_request import PlanRequest  # noqa: PLC0415
        from ..models.review_request import ReviewRequest  # noqa: PLC0415
        from ..models.trend_request import TrendRequest  # noqa: PLC0415

        d = dict(src_dict)

        def _parse_body(
            data: object,
        ) -> (
            BodyCompositionRequest
            | DecisionRequest
            | ForecastRequest
            | MaintenanceRequest
            | PlanRequest
            | ReviewRequest
            | TrendRequest
        ):
            try:
                if not isinstance(data, dict):
                    raise TypeError()
                body_type_0 = BodyCompositionRequest.from_dict(data)

                return body_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            try:
                if not isinstance(data, dict):
                    raise TypeError()
                body_type_1 = MaintenanceRequest.from_dict(data)

                return body_type_1
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            try:
                if not isinstance(data, dict):
                    raise TypeError()
                body_type_2 = DecisionRequest.from_dict(data)

                return body_type_2
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            try:
                if not isinstance(data, dict):
                    raise TypeError()
                body_type_3 = ForecastRequest.from_dict(data)

                return body_type_3
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            try:
                if not isinstance(data, dict):
                    raise TypeError()
                body_type_4 = PlanRequest.from_dict(data)

                return body_type_4
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            try:
                if not isinstance(data, dict):
                    raise TypeError()
                body_type_5 = TrendRequest.from_dict(data)

                return body_type_5
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            if not isinstance(data, dict):
                raise TypeError()
            body_type_6 = ReviewRequest.from_dict(data)

            return body_type_6

        body = _parse_body(d.pop("body"))

        operation = BatchOperation(d.pop("operation"))

        reference = d.pop("reference")

        batch_line = cls(
            body=body,
            operation=operation,
            reference=reference,
        )

        return batch_line
