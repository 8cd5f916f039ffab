from http import HTTPStatus
from typing import Any

import httpx

from ... import errors
from ...client import AuthenticatedClient, Client
from ...models.forecast_request import ForecastRequest
from ...models.forecast_response import ForecastResponse
from ...models.problem import Problem
from ...types import Response


def _get_kwargs(
    *,
    body: ForecastRequest,
) -> dict[str, Any]:
    headers: dict[str, Any] = {}

    _kwargs: dict[str, Any] = {
        "method": "post",
        "url": "/v1/forecasts",
    }

    _kwargs["json"] = body.to_dict()

    headers["Content-Type"] = "application/json"

    _kwargs["headers"] = headers
    return _kwargs


def _parse_response(
    *, client: AuthenticatedClient | Client, response: httpx.Response
) -> ForecastResponse | Problem | None:
    if response.status_code == 200:
        response_200 = ForecastResponse.from_dict(response.json())

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
) -> Response[ForecastResponse | Problem]:
    return Response(
        status_code=HTTPStatus(response.status_code),
        content=response.content,
        headers=response.headers,
        parsed=_parse_response(client=client, response=response),
    )


def sync_detailed(
    *,
    client: AuthenticatedClient,
    body: ForecastRequest,
) -> Response[ForecastResponse | Problem]:
    """Forecast an intake, or find the intake or the date for a target

     Answer one question about an intake, inside every guard rail.

    `path`: where a schedule of intakes leads. `intake_for_target`: the constant intake that reaches a
    target by a
    date. `date_for_target`: the date on which a constant intake reaches it. A deficit needs screening
    answers, and
    an intake that a rail forbids is refused with a 422 that names the rule; a target that no safe
    intake reaches is
    answered with `feasible: false` and the nearest on each axis.

    Args:
        body (ForecastRequest): A person and a question about what an intake does.

    Raises:
        errors.UnexpectedStatus: If the server returns an undocumented status code and Client.raise_on_unexpected_status is True.
        httpx.TimeoutException: If the request takes longer than Client.timeout.

    Returns:
        Response[ForecastResponse | Problem]
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
    body: ForecastRequest,
) -> ForecastResponse | Problem | None:
    """Forecast an intake, or find the intake or the date for a target

     Answer one question about an intake, inside every guard rail.

    `path`: where a schedule of intakes leads. `intake_for_target`: the constant intake that reaches a
    target by a
    date. `date_for_target`: the date on which a constant intake reaches it. A deficit needs screening
    answers, and
    an intake that a rail forbids is refused with a 422 that names the rule; a target that no safe
    intake reaches is
    answered with `feasible: false` and the nearest on each axis.

    Args:
        body (ForecastRequest): A person and a question about what an intake does.

    Raises:
        errors.UnexpectedStatus: If the server returns an undocumented status code and Client.raise_on_unexpected_status is True.
        httpx.TimeoutException: If the request takes longer than Client.timeout.

    Returns:
        ForecastResponse | Problem
    """

    return sync_detailed(
        client=client,
        body=body,
    ).parsed


async def asyncio_detailed(
    *,
    client: AuthenticatedClient,
    body: ForecastRequest,
) -> Response[ForecastResponse | Problem]:
    """Forecast an intake, or find the intake or the date for a target

     Answer one question about an intake, inside every guard rail.

    `path`: where a schedule of intakes leads. `intake_for_target`: the constant intake that reaches a
    target by a
    date. `date_for_target`: the date on which a constant intake reaches it. A deficit needs screening
    answers, and
    an intake that a rail forbids is refused with a 422 that names the rule; a target that no safe
    intake reaches is
    answered with `feasible: false` and the nearest on each axis.

    Args:
        body (ForecastRequest): A person and a question about what an intake does.

    Raises:
        errors.UnexpectedStatus: If the server returns an undocumented status code and Client.raise_on_unexpected_status is True.
        httpx.TimeoutException: If the request takes longer than Client.timeout.

    Returns:
        Response[ForecastResponse | Problem]
    """

    kwargs = _get_kwargs(
        body=body,
    )

    response = await client.get_async_httpx_client().request(**kwargs)

    return _build_response(client=client, response=response)


async def asyncio(
    *,
    client: AuthenticatedClient,
    body: ForecastRequest,
) -> ForecastResponse | Problem | None:
    """Forecast an intake, or find the intake or the date for a target

     Answer one question about an intake, inside every guard rail.

    `path`: where a schedule of intakes leads. `intake_for_target`: the constant intake that reaches a
    target by a
    date. `date_for_target`: the date on which a constant intake reaches it. A deficit needs screening
    answers, and
    an intake that a rail forbids is refused with a 422 that names the rule; a target that no safe
    intake reaches is
    answered with `feasible: false` and the nearest on each axis.

    Args:
        body (ForecastRequest): A person and a question about what an intake does.

    Raises:
        errors.UnexpectedStatus: If the server returns an undocumented status code and Client.raise_on_unexpected_status is True.
        httpx.TimeoutException: If the request takes longer than Client.timeout.

    Returns:
        ForecastResponse | Problem
    """

    return (
        await asyncio_detailed(
            client=client,
            body=body,
        )
    ).parsed
