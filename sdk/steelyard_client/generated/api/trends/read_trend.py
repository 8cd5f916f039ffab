from http import HTTPStatus
from typing import Any

import httpx

from ... import errors
from ...client import AuthenticatedClient, Client
from ...models.problem import Problem
from ...models.trend_request import TrendRequest
from ...models.trend_response import TrendResponse
from ...types import Response


def _get_kwargs(
    *,
    body: TrendRequest,
) -> dict[str, Any]:
    headers: dict[str, Any] = {}

    _kwargs: dict[str, Any] = {
        "method": "post",
        "url": "/v1/trends",
    }

    _kwargs["json"] = body.to_dict()

    headers["Content-Type"] = "application/json"

    _kwargs["headers"] = headers
    return _kwargs


def _parse_response(
    *, client: AuthenticatedClient | Client, response: httpx.Response
) -> Problem | TrendResponse | None:
    if response.status_code == 200:
        response_200 = TrendResponse.from_dict(response.json())

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
) -> Response[Problem | TrendResponse]:
    return Response(
        status_code=HTTPStatus(response.status_code),
        content=response.content,
        headers=response.headers,
        parsed=_parse_response(client=client, response=response),
    )


def sync_detailed(
    *,
    client: AuthenticatedClient,
    body: TrendRequest,
) -> Response[Problem | TrendResponse]:
    """Read a log of weights and intakes

     Read dated weights and intakes: gaps, doubles and outliers are fine.

    Weight is freed from daily noise, its rate is that of tissue, and recent change is split into tissue
    and
    carried mass (glycogen, water, gut content). Maintenance is learnt on the person's own logging
    scale. While
    there is too little data, the answer says so and how many more days are needed. Readings of body fat
    split tissue
    into fat and lean; days of menstruation keep the rise around them out; and mean intake is read from
    weight alone
    for those who log no food, and for others where `include` asks.

    Args:
        body (TrendRequest): A log to read, and whose it is: the person as on the day read at.

            Body fat that was measured on an earlier day goes into the log's `measurements`, with its
            date: in the profile it
            counts as that of the last day.

    Raises:
        errors.UnexpectedStatus: If the server returns an undocumented status code and Client.raise_on_unexpected_status is True.
        httpx.TimeoutException: If the request takes longer than Client.timeout.

    Returns:
        Response[Problem | TrendResponse]
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
    body: TrendRequest,
) -> Problem | TrendResponse | None:
    """Read a log of weights and intakes

     Read dated weights and intakes: gaps, doubles and outliers are fine.

    Weight is freed from daily noise, its rate is that of tissue, and recent change is split into tissue
    and
    carried mass (glycogen, water, gut content). Maintenance is learnt on the person's own logging
    scale. While
    there is too little data, the answer says so and how many more days are needed. Readings of body fat
    split tissue
    into fat and lean; days of menstruation keep the rise around them out; and mean intake is read from
    weight alone
    for those who log no food, and for others where `include` asks.

    Args:
        body (TrendRequest): A log to read, and whose it is: the person as on the day read at.

            Body fat that was measured on an earlier day goes into the log's `measurements`, with its
            date: in the profile it
            counts as that of the last day.

    Raises:
        errors.UnexpectedStatus: If the server returns an undocumented status code and Client.raise_on_unexpected_status is True.
        httpx.TimeoutException: If the request takes longer than Client.timeout.

    Returns:
        Problem | TrendResponse
    """

    return sync_detailed(
        client=client,
        body=body,
    ).parsed


async def asyncio_detailed(
    *,
    client: AuthenticatedClient,
    body: TrendRequest,
) -> Response[Problem | TrendResponse]:
    """Read a log of weights and intakes

     Read dated weights and intakes: gaps, doubles and outliers are fine.

    Weight is freed from daily noise, its rate is that of tissue, and recent change is split into tissue
    and
    carried mass (glycogen, water, gut content). Maintenance is learnt on the person's own logging
    scale. While
    there is too little data, the answer says so and how many more days are needed. Readings of body fat
    split tissue
    into fat and lean; days of menstruation keep the rise around them out; and mean intake is read from
    weight alone
    for those who log no food, and for others where `include` asks.

    Args:
        body (TrendRequest): A log to read, and whose it is: the person as on the day read at.

            Body fat that was measured on an earlier day goes into the log's `measurements`, with its
            date: in the profile it
            counts as that of the last day.

    Raises:
        errors.UnexpectedStatus: If the server returns an undocumented status code and Client.raise_on_unexpected_status is True.
        httpx.TimeoutException: If the request takes longer than Client.timeout.

    Returns:
        Response[Problem | TrendResponse]
    """

    kwargs = _get_kwargs(
        body=body,
    )

    response = await client.get_async_httpx_client().request(**kwargs)

    return _build_response(client=client, response=response)


async def asyncio(
    *,
    client: AuthenticatedClient,
    body: TrendRequest,
) -> Problem | TrendResponse | None:
    """Read a log of weights and intakes

     Read dated weights and intakes: gaps, doubles and outliers are fine.

    Weight is freed from daily noise, its rate is that of tissue, and recent change is split into tissue
    and
    carried mass (glycogen, water, gut content). Maintenance is learnt on the person's own logging
    scale. While
    there is too little data, the answer says so and how many more days are needed. Readings of body fat
    split tissue
    into fat and lean; days of menstruation keep the rise around them out; and mean intake is read from
    weight alone
    for those who log no food, and for others where `include` asks.

    Args:
        body (TrendRequest): A log to read, and whose it is: the person as on the day read at.

            Body fat that was measured on an earlier day goes into the log's `measurements`, with its
            date: in the profile it
            counts as that of the last day.

    Raises:
        errors.UnexpectedStatus: If the server returns an undocumented status code and Client.raise_on_unexpected_status is True.
        httpx.TimeoutException: If the request takes longer than Client.timeout.

    Returns:
        Problem | TrendResponse
    """

    return (
        await asyncio_detailed(
            client=client,
            body=body,
        )
    ).parsed
