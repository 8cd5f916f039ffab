from http import HTTPStatus
from typing import Any

import httpx

from ... import errors
from ...client import AuthenticatedClient, Client
from ...models.maintenance_request import MaintenanceRequest
from ...models.maintenance_response import MaintenanceResponse
from ...models.problem import Problem
from ...types import Response


def _get_kwargs(
    *,
    body: MaintenanceRequest,
) -> dict[str, Any]:
    headers: dict[str, Any] = {}

    _kwargs: dict[str, Any] = {
        "method": "post",
        "url": "/v1/maintenance",
    }

    _kwargs["json"] = body.to_dict()

    headers["Content-Type"] = "application/json"

    _kwargs["headers"] = headers
    return _kwargs


def _parse_response(
    *, client: AuthenticatedClient | Client, response: httpx.Response
) -> MaintenanceResponse | Problem | None:
    if response.status_code == 200:
        response_200 = MaintenanceResponse.from_dict(response.json())

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
) -> Response[MaintenanceResponse | Problem]:
    return Response(
        status_code=HTTPStatus(response.status_code),
        content=response.content,
        headers=response.headers,
        parsed=_parse_response(client=client, response=response),
    )


def sync_detailed(
    *,
    client: AuthenticatedClient,
    body: MaintenanceRequest,
) -> Response[MaintenanceResponse | Problem]:
    """Estimate maintenance energy

     Estimate maintenance from prediction equations, activity and, where there is one, a log.

    The equations are the prior, the log of weights and intakes the likelihood; the answer is on the
    person's own
    logging scale and says how much each counted. Every equation is listed with whether it applies.

    Args:
        body (MaintenanceRequest): Whose maintenance to estimate, as on the day that the estimate
            is for, and the log to learn from, where there is
            one.

    Raises:
        errors.UnexpectedStatus: If the server returns an undocumented status code and Client.raise_on_unexpected_status is True.
        httpx.TimeoutException: If the request takes longer than Client.timeout.

    Returns:
        Response[MaintenanceResponse | Problem]
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
    body: MaintenanceRequest,
) -> MaintenanceResponse | Problem | None:
    """Estimate maintenance energy

     Estimate maintenance from prediction equations, activity and, where there is one, a log.

    The equations are the prior, the log of weights and intakes the likelihood; the answer is on the
    person's own
    logging scale and says how much each counted. Every equation is listed with whether it applies.

    Args:
        body (MaintenanceRequest): Whose maintenance to estimate, as on the day that the estimate
            is for, and the log to learn from, where there is
            one.

    Raises:
        errors.UnexpectedStatus: If the server returns an undocumented status code and Client.raise_on_unexpected_status is True.
        httpx.TimeoutException: If the request takes longer than Client.timeout.

    Returns:
        MaintenanceResponse | Problem
    """

    return sync_detailed(
        client=client,
        body=body,
    ).parsed


async def asyncio_detailed(
    *,
    client: AuthenticatedClient,
    body: MaintenanceRequest,
) -> Response[MaintenanceResponse | Problem]:
    """Estimate maintenance energy

     Estimate maintenance from prediction equations, activity and, where there is one, a log.

    The equations are the prior, the log of weights and intakes the likelihood; the answer is on the
    person's own
    logging scale and says how much each counted. Every equation is listed with whether it applies.

    Args:
        body (MaintenanceRequest): Whose maintenance to estimate, as on the day that the estimate
            is for, and the log to learn from, where there is
            one.

    Raises:
        errors.UnexpectedStatus: If the server returns an undocumented status code and Client.raise_on_unexpected_status is True.
        httpx.TimeoutException: If the request takes longer than Client.timeout.

    Returns:
        Response[MaintenanceResponse | Problem]
    """

    kwargs = _get_kwargs(
        body=body,
    )

    response = await client.get_async_httpx_client().request(**kwargs)

    return _build_response(client=client, response=response)


async def asyncio(
    *,
    client: AuthenticatedClient,
    body: MaintenanceRequest,
) -> MaintenanceResponse | Problem | None:
    """Estimate maintenance energy

     Estimate maintenance from prediction equations, activity and, where there is one, a log.

    The equations are the prior, the log of weights and intakes the likelihood; the answer is on the
    person's own
    logging scale and says how much each counted. Every equation is listed with whether it applies.

    Args:
        body (MaintenanceRequest): Whose maintenance to estimate, as on the day that the estimate
            is for, and the log to learn from, where there is
            one.

    Raises:
        errors.UnexpectedStatus: If the server returns an undocumented status code and Client.raise_on_unexpected_status is True.
        httpx.TimeoutException: If the request takes longer than Client.timeout.

    Returns:
        MaintenanceResponse | Problem
    """

    return (
        await asyncio_detailed(
            client=client,
            body=body,
        )
    ).parsed
