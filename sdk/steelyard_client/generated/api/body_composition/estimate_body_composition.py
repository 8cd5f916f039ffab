from http import HTTPStatus
from typing import Any

import httpx

from ... import errors
from ...client import AuthenticatedClient, Client
from ...models.body_composition_request import BodyCompositionRequest
from ...models.body_composition_response import BodyCompositionResponse
from ...models.problem import Problem
from ...types import Response


def _get_kwargs(
    *,
    body: BodyCompositionRequest,
) -> dict[str, Any]:
    headers: dict[str, Any] = {}

    _kwargs: dict[str, Any] = {
        "method": "post",
        "url": "/v1/body-composition",
    }

    _kwargs["json"] = body.to_dict()

    headers["Content-Type"] = "application/json"

    _kwargs["headers"] = headers
    return _kwargs


def _parse_response(
    *, client: AuthenticatedClient | Client, response: httpx.Response
) -> BodyCompositionResponse | Problem | None:
    if response.status_code == 200:
        response_200 = BodyCompositionResponse.from_dict(response.json())

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
) -> Response[BodyCompositionResponse | Problem]:
    return Response(
        status_code=HTTPStatus(response.status_code),
        content=response.content,
        headers=response.headers,
        parsed=_parse_response(client=client, response=response),
    )


def sync_detailed(
    *,
    client: AuthenticatedClient,
    body: BodyCompositionRequest,
) -> Response[BodyCompositionResponse | Problem]:
    """Estimate body composition

     Estimate body fat and fat-free mass from girths, skinfolds, readings, or height and weight.

    Several measurements are combined, each weighted by its precision; errors that methods have in
    common are counted
    once, and repeats shrink only the part of an error that differs from day to day. Measurements that
    disagree widen
    the interval and are named. The answer says where the body fat stands against the healthy range for
    age and sex.

    Args:
        body (BodyCompositionRequest): A person and what was measured. Repeats of a kind are
            welcome: they average out the day-to-day error.

    Raises:
        errors.UnexpectedStatus: If the server returns an undocumented status code and Client.raise_on_unexpected_status is True.
        httpx.TimeoutException: If the request takes longer than Client.timeout.

    Returns:
        Response[BodyCompositionResponse | Problem]
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
    body: BodyCompositionRequest,
) -> BodyCompositionResponse | Problem | None:
    """Estimate body composition

     Estimate body fat and fat-free mass from girths, skinfolds, readings, or height and weight.

    Several measurements are combined, each weighted by its precision; errors that methods have in
    common are counted
    once, and repeats shrink only the part of an error that differs from day to day. Measurements that
    disagree widen
    the interval and are named. The answer says where the body fat stands against the healthy range for
    age and sex.

    Args:
        body (BodyCompositionRequest): A person and what was measured. Repeats of a kind are
            welcome: they average out the day-to-day error.

    Raises:
        errors.UnexpectedStatus: If the server returns an undocumented status code and Client.raise_on_unexpected_status is True.
        httpx.TimeoutException: If the request takes longer than Client.timeout.

    Returns:
        BodyCompositionResponse | Problem
    """

    return sync_detailed(
        client=client,
        body=body,
    ).parsed


async def asyncio_detailed(
    *,
    client: AuthenticatedClient,
    body: BodyCompositionRequest,
) -> Response[BodyCompositionResponse | Problem]:
    """Estimate body composition

     Estimate body fat and fat-free mass from girths, skinfolds, readings, or height and weight.

    Several measurements are combined, each weighted by its precision; errors that methods have in
    common are counted
    once, and repeats shrink only the part of an error that differs from day to day. Measurements that
    disagree widen
    the interval and are named. The answer says where the body fat stands against the healthy range for
    age and sex.

    Args:
        body (BodyCompositionRequest): A person and what was measured. Repeats of a kind are
            welcome: they average out the day-to-day error.

    Raises:
        errors.UnexpectedStatus: If the server returns an undocumented status code and Client.raise_on_unexpected_status is True.
        httpx.TimeoutException: If the request takes longer than Client.timeout.

    Returns:
        Response[BodyCompositionResponse | Problem]
    """

    kwargs = _get_kwargs(
        body=body,
    )

    response = await client.get_async_httpx_client().request(**kwargs)

    return _build_response(client=client, response=response)


async def asyncio(
    *,
    client: AuthenticatedClient,
    body: BodyCompositionRequest,
) -> BodyCompositionResponse | Problem | None:
    """Estimate body composition

     Estimate body fat and fat-free mass from girths, skinfolds, readings, or height and weight.

    Several measurements are combined, each weighted by its precision; errors that methods have in
    common are counted
    once, and repeats shrink only the part of an error that differs from day to day. Measurements that
    disagree widen
    the interval and are named. The answer says where the body fat stands against the healthy range for
    age and sex.

    Args:
        body (BodyCompositionRequest): A person and what was measured. Repeats of a kind are
            welcome: they average out the day-to-day error.

    Raises:
        errors.UnexpectedStatus: If the server returns an undocumented status code and Client.raise_on_unexpected_status is True.
        httpx.TimeoutException: If the request takes longer than Client.timeout.

    Returns:
        BodyCompositionResponse | Problem
    """

    return (
        await asyncio_detailed(
            client=client,
            body=body,
        )
    ).parsed
