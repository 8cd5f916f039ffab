from http import HTTPStatus
from typing import Any

import httpx

from ... import errors
from ...client import AuthenticatedClient, Client
from ...models.problem import Problem
from ...models.season_request import SeasonRequest
from ...models.season_response import SeasonResponse
from ...types import Response


def _get_kwargs(
    *,
    body: SeasonRequest,
) -> dict[str, Any]:
    headers: dict[str, Any] = {}

    _kwargs: dict[str, Any] = {
        "method": "post",
        "url": "/v1/seasons",
    }

    _kwargs["json"] = body.to_dict()

    headers["Content-Type"] = "application/json"

    _kwargs["headers"] = headers
    return _kwargs


def _parse_response(
    *, client: AuthenticatedClient | Client, response: httpx.Response
) -> Problem | SeasonResponse | None:
    if response.status_code == 200:
        response_200 = SeasonResponse.from_dict(response.json())

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
) -> Response[Problem | SeasonResponse]:
    return Response(
        status_code=HTTPStatus(response.status_code),
        content=response.content,
        headers=response.headers,
        parsed=_parse_response(client=client, response=response),
    )


def sync_detailed(
    *,
    client: AuthenticatedClient,
    body: SeasonRequest,
) -> Response[Problem | SeasonResponse]:
    """Plan a season under one strategy

     Chain gains, cuts and maintenance from today to a horizon of 12 to 156 weeks, as one strategy says.

    Each week the body is looked at: a gain runs until body fat reaches the strategy's ceiling, a cut
    starts where the
    calendar and every guard rail allow one, and maintenance follows it. Weekly values carry 80 %
    intervals for
    keeping the phases and setting intakes anew from the log. Limits that the strategy does not keep are
    listed in
    `broken_limits`, with `feasible` false; the plan is then the nearest it gets. A strategy with cuts
    needs screening
    answers and a body-fat reading, and somebody for whom no deficit is safe gets a 422 whose type names
    the rule: a
    season without cuts remains possible, but not under 18 nor with an eating disorder, since it keeps
    to a band of body
    fat. A gain that is never cut ends at the upper end of the band, and body fat that was never
    measured is held only
    where it is over that end all but surely.

    Args:
        body (SeasonRequest): A person, a horizon, limits and a strategy.

    Raises:
        errors.UnexpectedStatus: If the server returns an undocumented status code and Client.raise_on_unexpected_status is True.
        httpx.TimeoutException: If the request takes longer than Client.timeout.

    Returns:
        Response[Problem | SeasonResponse]
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
    body: SeasonRequest,
) -> Problem | SeasonResponse | None:
    """Plan a season under one strategy

     Chain gains, cuts and maintenance from today to a horizon of 12 to 156 weeks, as one strategy says.

    Each week the body is looked at: a gain runs until body fat reaches the strategy's ceiling, a cut
    starts where the
    calendar and every guard rail allow one, and maintenance follows it. Weekly values carry 80 %
    intervals for
    keeping the phases and setting intakes anew from the log. Limits that the strategy does not keep are
    listed in
    `broken_limits`, with `feasible` false; the plan is then the nearest it gets. A strategy with cuts
    needs screening
    answers and a body-fat reading, and somebody for whom no deficit is safe gets a 422 whose type names
    the rule: a
    season without cuts remains possible, but not under 18 nor with an eating disorder, since it keeps
    to a band of body
    fat. A gain that is never cut ends at the upper end of the band, and body fat that was never
    measured is held only
    where it is over that end all but surely.

    Args:
        body (SeasonRequest): A person, a horizon, limits and a strategy.

    Raises:
        errors.UnexpectedStatus: If the server returns an undocumented status code and Client.raise_on_unexpected_status is True.
        httpx.TimeoutException: If the request takes longer than Client.timeout.

    Returns:
        Problem | SeasonResponse
    """

    return sync_detailed(
        client=client,
        body=body,
    ).parsed


async def asyncio_detailed(
    *,
    client: AuthenticatedClient,
    body: SeasonRequest,
) -> Response[Problem | SeasonResponse]:
    """Plan a season under one strategy

     Chain gains, cuts and maintenance from today to a horizon of 12 to 156 weeks, as one strategy says.

    Each week the body is looked at: a gain runs until body fat reaches the strategy's ceiling, a cut
    starts where the
    calendar and every guard rail allow one, and maintenance follows it. Weekly values carry 80 %
    intervals for
    keeping the phases and setting intakes anew from the log. Limits that the strategy does not keep are
    listed in
    `broken_limits`, with `feasible` false; the plan is then the nearest it gets. A strategy with cuts
    needs screening
    answers and a body-fat reading, and somebody for whom no deficit is safe gets a 422 whose type names
    the rule: a
    season without cuts remains possible, but not under 18 nor with an eating disorder, since it keeps
    to a band of body
    fat. A gain that is never cut ends at the upper end of the band, and body fat that was never
    measured is held only
    where it is over that end all but surely.

    Args:
        body (SeasonRequest): A person, a horizon, limits and a strategy.

    Raises:
        errors.UnexpectedStatus: If the server returns an undocumented status code and Client.raise_on_unexpected_status is True.
        httpx.TimeoutException: If the request takes longer than Client.timeout.

    Returns:
        Response[Problem | SeasonResponse]
    """

    kwargs = _get_kwargs(
        body=body,
    )

    response = await client.get_async_httpx_client().request(**kwargs)

    return _build_response(client=client, response=response)


async def asyncio(
    *,
    client: AuthenticatedClient,
    body: SeasonRequest,
) -> Problem | SeasonResponse | None:
    """Plan a season under one strategy

     Chain gains, cuts and maintenance from today to a horizon of 12 to 156 weeks, as one strategy says.

    Each week the body is looked at: a gain runs until body fat reaches the strategy's ceiling, a cut
    starts where the
    calendar and every guard rail allow one, and maintenance follows it. Weekly values carry 80 %
    intervals for
    keeping the phases and setting intakes anew from the log. Limits that the strategy does not keep are
    listed in
    `broken_limits`, with `feasible` false; the plan is then the nearest it gets. A strategy with cuts
    needs screening
    answers and a body-fat reading, and somebody for whom no deficit is safe gets a 422 whose type names
    the rule: a
    season without cuts remains possible, but not under 18 nor with an eating disorder, since it keeps
    to a band of body
    fat. A gain that is never cut ends at the upper end of the band, and body fat that was never
    measured is held only
    where it is over that end all but surely.

    Args:
        body (SeasonRequest): A person, a horizon, limits and a strategy.

    Raises:
        errors.UnexpectedStatus: If the server returns an undocumented status code and Client.raise_on_unexpected_status is True.
        httpx.TimeoutException: If the request takes longer than Client.timeout.

    Returns:
        Problem | SeasonResponse
    """

    return (
        await asyncio_detailed(
            client=client,
            body=body,
        )
    ).parsed
