using System.Collections;
using System.Reflection;
using System.Text.Json;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.Metadata;

namespace Triage.Service.Http;

/// <summary>
/// What the serializer lets pass though the document does not allow it: "null" for a whole body, and null within a list. Such a body is refused
/// before anything is done.
/// </summary>
internal static class WholeBodies
{
    public static ValueTask<object?> Check(EndpointFilterInvocationContext call, EndpointFilterDelegate next)
    {
        if (call.HttpContext.GetEndpoint()?.Metadata.GetMetadata<IAcceptsMetadata>() is { RequestType: { } wanted } && wanted.Assembly == typeof(WholeBodies).Assembly)
        {
            if (call.Arguments.FirstOrDefault(wanted.IsInstanceOfType) is not { } body)
                return new(Refused("$"));
            if (NullIn(body, "$") is { } where)
                return new(Refused(where));
        }

        return next(call);
    }

    private static object Refused(string where) =>
        Problems.Of(StatusCodes.Status400BadRequest, "The JSON cannot be read.", $"Look at {where}: null may not stand there; /openapi/v1.json says what may.", null);

    /// <summary>JSON path of the first null in a list or table; null when there is none.</summary>
    private static string? NullIn(object value, string path) => value switch
    {
        string => null,
        IDictionary table => table.Keys.Cast<object>().Select(k => In(table[k], $"{path}.{k}")).FirstOrDefault(w => w is not null),
        IEnumerable list => list.Cast<object?>().Select((item, i) => In(item, $"{path}[{i}]")).FirstOrDefault(w => w is not null),
        _ when value.GetType().Assembly == typeof(WholeBodies).Assembly => value.GetType().GetProperties(BindingFlags.Public | BindingFlags.Instance)
            .Where(p => p.GetIndexParameters().Length == 0 && p.GetValue(value) is not null)
            .Select(p => NullIn(p.GetValue(value)!, $"{path}.{JsonNamingPolicy.CamelCase.ConvertName(p.Name)}")).FirstOrDefault(w => w is not null),
        _ => null,
    };

    private static string? In(object? item, string path) => item is null ? path : NullIn(item, path);
}
