from http import HTTPStatus
from typing import Any

import httpx

from ... import errors
from ...client import AuthenticatedClient, Client
from ...models.optimum_request import OptimumRequest
from ...models.optimum_response import OptimumResponse
from ...models.problem import Problem
from ...types import Response


def _get_kwargs(
    *,
    body: OptimumRequest,
) -> dict[str, Any]:
    headers: dict[str, Any] = {}

    _kwargs: dict[str, Any] = {
        "method": "post",
        "url": "/v1/seasons/optimum",
    }

    _kwargs["json"] = body.to_dict()

    headers["Content-Type"] = "application/json"

    _kwargs["headers"] = headers
    return _kwargs


def _parse_response(
    *, client: AuthenticatedClient | Client, response: httpx.Response
) -> OptimumResponse | Problem | None:
    if response.status_code == 200:
        response_200 = OptimumResponse.from_dict(response.json())

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
) -> Response[OptimumResponse | Problem]:
    return Response(
        status_code=HTTPStatus(response.status_code),
        content=response.content,
        headers=response.headers,
        parsed=_parse_response(client=client, response=response),
    )


def sync_detailed(
    *,
    client: AuthenticatedClient,
    body: OptimumRequest,
) -> Response[OptimumResponse | Problem]:
    """Find the season that gains most lean tissue inside the limits

     Search thousands of strategies for the most lean tissue at the horizon, inside limits and guard
    rails.

    Surplus, the body fat at which to cut, how far, how hard and how long are crossed in a grid and
    refined; the
    ready-made strategies are searched as well, so that the optimum never falls short of one that keeps
    the limits.
    `trade_off` shows how much lean tissue each week above the band buys. Without a limit on weeks above
    the band, at
    most a quarter more than the fewest possible are allowed. Where that is the whole season, since it
    starts far above
    the band, body fat must fall by at least four fifths of what it could: `allowed_final_fat_fraction`
    tells to where.
    Where a rule forbids cuts for this person, only seasons without one are searched and the rule is
    listed under
    `guard_rails`. A search larger than `strategies_searched` x `horizon_weeks` = 1,000,000 is refused
    with a 422.

    Args:
        body (OptimumRequest): A person, a horizon and limits: which strategy gains most lean
            tissue inside them?

    Raises:
        errors.UnexpectedStatus: If the server returns an undocumented status code and Client.raise_on_unexpected_status is True.
        httpx.TimeoutException: If the request takes longer than Client.timeout.

    Returns:
        Response[OptimumResponse | Problem]
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
    body: OptimumRequest,
) -> OptimumResponse | Problem | None:
    """Find the season that gains most lean tissue inside the limits

     Search thousands of strategies for the most lean tissue at the horizon, inside limits and guard
    rails.

    Surplus, the body fat at which to cut, how far, how hard and how long are crossed in a grid and
    refined; the
    ready-made strategies are searched as well, so that the optimum never falls short of one that keeps
    the limits.
    `trade_off` shows how much lean tissue each week above the band buys. Without a limit on weeks above
    the band, at
    most a quarter more than the fewest possible are allowed. Where that is the whole season, since it
    starts far above
    the band, body fat must fall by at least four fifths of what it could: `allowed_final_fat_fraction`
    tells to where.
    Where a rule forbids cuts for this person, only seasons without one are searched and the rule is
    listed under
    `guard_rails`. A search larger than `strategies_searched` x `horizon_weeks` = 1,000,000 is refused
    with a 422.

    Args:
        body (OptimumRequest): A person, a horizon and limits: which strategy gains most lean
            tissue inside them?

    Raises:
        errors.UnexpectedStatus: If the server returns an undocumented status code and Client.raise_on_unexpected_status is True.
        httpx.TimeoutException: If the request takes longer than Client.timeout.

    Returns:
        OptimumResponse | Problem
    """

    return sync_detailed(
        client=client,
        body=body,
    ).parsed


async def asyncio_detailed(
    *,
    client: AuthenticatedClient,
    body: OptimumRequest,
) -> Response[OptimumResponse | Problem]:
    """Find the season that gains most lean tissue inside the limits

     Search thousands of strategies for the most lean tissue at the horizon, inside limits and guard
    rails.

    Surplus, the body fat at which to cut, how far, how hard and how long are crossed in a grid and
    refined; the
    ready-made strategies are searched as well, so that the optimum never falls short of one that keeps
    the limits.
    `trade_off` shows how much lean tissue each week above the band buys. Without a limit on weeks above
    the band, at
    most a quarter more than the fewest possible are allowed. Where that is the whole season, since it
    starts far above
    the band, body fat must fall by at least four fifths of what it could: `allowed_final_fat_fraction`
    tells to where.
    Where a rule forbids cuts for this person, only seasons without one are searched and the rule is
    listed under
    `guard_rails`. A search larger than `strategies_searched` x `horizon_weeks` = 1,000,000 is refused
    with a 422.

    Args:
        body (OptimumRequest): A person, a horizon and limits: which strategy gains most lean
            tissue inside them?

    Raises:
        errors.UnexpectedStatus: If the server returns an undocumented status code and Client.raise_on_unexpected_status is True.
        httpx.TimeoutException: If the request takes longer than Client.timeout.

    Returns:
        Response[OptimumResponse | Problem]
    """

    kwargs = _get_kwargs(
        body=body,
    )

    response = await client.get_async_httpx_client().request(**kwargs)

    return _build_response(client=client, response=response)


async def asyncio(
    *,
    client: AuthenticatedClient,
    body: OptimumRequest,
) -> OptimumResponse | Problem | None:
    """Find the season that gains most lean tissue inside the limits

     Search thousands of strategies for the most lean tissue at the horizon, inside limits and guard
    rails.

    Surplus, the body fat at which to cut, how far, how hard and how long are crossed in a grid and
    refined; the
    ready-made strategies are searched as well, so that the optimum never falls short of one that keeps
    the limits.
    `trade_off` shows how much lean tissue each week above the band buys. Without a limit on weeks above
    the band, at
    most a quarter more than the fewest possible are allowed. Where that is the whole season, since it
    starts far above
    the band, body fat must fall by at least four fifths of what it could: `allowed_final_fat_fraction`
    tells to where.
    Where a rule forbids cuts for this person, only seasons without one are searched and the rule is
    listed under
    `guard_rails`. A search larger than `strategies_searched` x `horizon_weeks` = 1,000,000 is refused
    with a 422.

    Args:
        body (OptimumRequest): A person, a horizon and limits: which strategy gains most lean
            tissue inside them?

    Raises:
        errors.UnexpectedStatus: If the server returns an undocumented status code and Client.raise_on_unexpected_status is True.
        httpx.TimeoutException: If the request takes longer than Client.timeout.

    Returns:
        OptimumResponse | Problem
    """

    return (
        await asyncio_detailed(
            client=client,
            body=body,
        )
    ).parsed
