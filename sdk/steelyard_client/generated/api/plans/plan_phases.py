from http import HTTPStatus
from typing import Any

import httpx

from ... import errors
from ...client import AuthenticatedClient, Client
from ...models.plan_request import PlanRequest
from ...models.plan_response import PlanResponse
from ...models.problem import Problem
from ...types import Response


def _get_kwargs(
    *,
    body: PlanRequest,
) -> dict[str, Any]:
    headers: dict[str, Any] = {}

    _kwargs: dict[str, Any] = {
        "method": "post",
        "url": "/v1/plans",
    }

    _kwargs["json"] = body.to_dict()

    headers["Content-Type"] = "application/json"

    _kwargs["headers"] = headers
    return _kwargs


def _parse_response(
    *, client: AuthenticatedClient | Client, response: httpx.Response
) -> PlanResponse | Problem | None:
    if response.status_code == 200:
        response_200 = PlanResponse.from_dict(response.json())

        return response_200

    if response.status_code == 400:
        response_400 = Problem.from_dict(response.json())

        return response_400

    if response.status_code == 401:
        response_401 = Problem.from_dict(response.json())

        return response_401

    if response.status_code == 403:
        response_403 = Problem.from_dict(response.json())

        return response_403

    if response.status_code == 406:
        response_406 = Problem.from_dict(response.json())

        return response_406

    if response.status_code == 408:
        response_408 = Problem.from_dict(response.json())

        return response_408

    if response.status_code == 413:
        response_413 = Problem.from_dict(response.json())

        return response_413

    if response.status_code == 415:
        response_415 = Problem.from_dict(response.json())

        return response_415

    if response.status_code == 422:
        response_422 = Problem.from_dict(response.json())

        return response_422

    if response.status_code == 429:
        response_429 = Problem.from_dict(response.json())

        return response_429

    if response.status_code == 500:
        response_500 = Problem.from_dict(response.json())

        return response_500

    if response.status_code == 503:
        response_503 = Problem.from_dict(response.json())

        return response_503

    if client.raise_on_unexpected_status:
        raise errors.UnexpectedStatus(response.status_code, response.content)
    else:
        return None


def _build_response(
    *, client: AuthenticatedClient | Client, response: httpx.Response
) -> Response[PlanResponse | Problem]:
    return Response(
        status_code=HTTPStatus(response.status_code),
        content=response.content,
        headers=response.headers,
        parsed=_parse_response(client=client, response=response),
    )


def sync_detailed(
    *,
    client: AuthenticatedClient,
    body: PlanRequest,
) -> Response[PlanResponse | Problem]:
    """Plan a mini-cut, a cut, a gain or a hold

     Plan a phase and what follows it, inside every guard rail.

    A fat-loss phase (`mini_cut` or `cut`) takes a goal, a time, or both: the rest is solved. Each week
    has its intake
    and macronutrients, and a forecast of scale weight, fat, lean tissue and carried mass with 80 %
    intervals. Where no
    safe plan does what was asked, `feasible` is false and `nearest` says what would. A person for whom
    no deficit is
    safe gets a 422 whose type names the rule. Screening answers are required: without them no deficit
    is planned. To
    plan the rest of a phase under way send the body as it is now, `weeks_done` and what is eaten now as
    `current_intake_kcal`. Other sizes of the phase, and more activity beside it, are worked out where
    `include` asks.

    Args:
        body (PlanRequest): A person, their screening answers, and the phase to plan.

    Raises:
        errors.UnexpectedStatus: If the server returns an undocumented status code and Client.raise_on_unexpected_status is True.
        httpx.TimeoutException: If the request takes longer than Client.timeout.

    Returns:
        Response[PlanResponse | Problem]
    """

    kwargs = _get_kwargs(
        body=body,
    )

    response = client.get_httpx_client().request(
        **kwargs,
    )

    return _build_response(client=client, response=response)


def sync(
    *,
    client: AuthenticatedClient,
    body: PlanRequest,
) -> PlanResponse | Problem | None:
    """Plan a mini-cut, a cut, a gain or a hold

     Plan a phase and what follows it, inside every guard rail.

    A fat-loss phase (`mini_cut` or `cut`) takes a goal, a time, or both: the rest is solved. Each week
    has its intake
    and macronutrients, and a forecast of scale weight, fat, lean tissue and carried mass with 80 %
    intervals. Where no
    safe plan does what was asked, `feasible` is false and `nearest` says what would. A person for whom
    no deficit is
    safe gets a 422 whose type names the rule. Screening answers are required: without them no deficit
    is planned. To
    plan the rest of a phase under way send the body as it is now, `weeks_done` and what is eaten now as
    `current_intake_kcal`. Other sizes of the phase, and more activity beside it, are worked out where
    `include` asks.

    Args:
        body (PlanRequest): A person, their screening answers, and the phase to plan.

    Raises:
        errors.UnexpectedStatus: If the server returns an undocumented status code and Client.raise_on_unexpected_status is True.
        httpx.TimeoutException: If the request takes longer than Client.timeout.

    Returns:
        PlanResponse | Problem
    """

    return sync_detailed(
        client=client,
        body=body,
    ).parsed


async def asyncio_detailed(
    *,
    client: AuthenticatedClient,
    body: PlanRequest,
) -> Response[PlanResponse | Problem]:
    """Plan a mini-cut, a cut, a gain or a hold

     Plan a phase and what follows it, inside every guard rail.

    A fat-loss phase (`mini_cut` or `cut`) takes a goal, a time, or both: the rest is solved. Each week
    has its intake
    and macronutrients, and a forecast of scale weight, fat, lean tissue and carried mass with 80 %
    intervals. Where no
    safe plan does what was asked, `feasible` is false and `nearest` says what would. A person for whom
    no deficit is
    safe gets a 422 whose type names the rule. Screening answers are required: without them no deficit
    is planned. To
    plan the rest of a phase under way send the body as it is now, `weeks_done` and what is eaten now as
    `current_intake_kcal`. Other sizes of the phase, and more activity beside it, are worked out where
    `include` asks.

    Args:
        body (PlanRequest): A person, their screening answers, and the phase to plan.

    Raises:
        errors.UnexpectedStatus: If the server returns an undocumented status code and Client.raise_on_unexpected_status is True.
        httpx.TimeoutException: If the request takes longer than Client.timeout.

    Returns:
        Response[PlanResponse | Problem]
    """

    kwargs = _get_kwargs(
        body=body,
    )

    response = await client.get_async_httpx_client().request(**kwargs)

    return _build_response(client=client, response=response)


async def asyncio(
    *,
    client: AuthenticatedClient,
    body: PlanRequest,
) -> PlanResponse | Problem | None:
    """Plan a mini-cut, a cut, a gain or a hold

     Plan a phase and what follows it, inside every guard rail.

    A fat-loss phase (`mini_cut` or `cut`) takes a goal, a time, or both: the rest is solved. Each week
    has its intake
    and macronutrients, and a forecast of scale weight, fat, lean tissue and carried mass with 80 %
    intervals. Where no
    safe plan does what was asked, `feasible` is false and `nearest` says what would. A person for whom
    no deficit is
    safe gets a 422 whose type names the rule. Screening answers are required: without them no deficit
    is planned. To
    plan the rest of a phase under way send the body as it is now, `weeks_done` and what is eaten now as
    `current_intake_kcal`. Other sizes of the phase, and more activity beside it, are worked out where
    `include` asks.

    Args:
        body (PlanRequest): A person, their screening answers, and the phase to plan.

    Raises:
        errors.UnexpectedStatus: If the server returns an undocumented status code and Client.raise_on_unexpected_status is True.
        httpx.TimeoutException: If the request takes longer than Client.timeout.

    Returns:
        PlanResponse | Problem
    """

    return (
        await asyncio_detailed(
            client=client,
            body=body,
        )
    ).parsed
