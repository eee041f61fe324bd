using System.Text.Json;

namespace Triage.Workshop.Exchange.Importing;

internal static class JsonPlaces
{
    /// <summary>Line and position, from 1, of the first string or name with this text; 1, 1 when there is none.</summary>
    public static (long Line, long Column) Of(byte[] json, string text)
    {
        var reader = new Utf8JsonReader(json, new JsonReaderOptions { CommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true });
        while (reader.Read())
        {
            if (reader.TokenType is JsonTokenType.String or JsonTokenType.PropertyName && reader.ValueTextEquals(text))
            {
                var before = json.AsSpan(0, (int)reader.TokenStartIndex);
                return (before.Count((byte)'\n') + 1, before.Length - before.LastIndexOf((byte)'\n'));
            }
        }

        return (1, 1);
    }
}
