using Triage.Service.Jobs;

namespace Triage.Service.Tests.Endpoints;

/// <summary>Forms of a job's pages that nobody means well, from a seed: fields of any step with any value, whole or damaged.</summary>
internal sealed class MadeUpForms(Random random)
{
    private const string Boundary = "b0unda7y";

    private static readonly string[] Fields =
    [
        "about", "value", "when", "watched", "sure", "comes-and-goes", "outcome", "row:x", "cannot-tell", "done", "trait:supply", "effect", "still", "after", "tested-before", "part", "old-back", "shut", "what", "where", "note", "back-on",
        "stage", "current", "state", "price", "shipping", "lead", "from", "limit", "may-erase", "originals-back", "for", "until", "entry", "name", "says", "class", "maker", "fix", "reveals", "way", "minutes", "power", "caution", "steps",
        "cause", "causes", "grade", "new-cause", "damage", "lesson", "came-back", "text", "to", "mode", "load", "page", "back", "version", "job",
    ];

    private static readonly string[] Values =
        [.. MadeUpCalls.Words, "yes", "no", "0", "-1", "7", "99999999999", "2026-11-30", "0001-01-01", "no-change", "better", "limited", "ordered", "measured", "mended", "findings", "parts", "supply=mains", "no-display=seen"];

    public SentCall Next()
    {
        var step = One([.. JobForms.All.Keys.Order(StringComparer.Ordinal)]);
        var fields = Fields.Where(_ => random.Next(4) == 0).SelectMany(f => Enumerable.Repeat(f, random.Next(8) == 0 ? 2 : 1)).Select(f => (Name: f, Value: One(Values)))
            .Prepend((Name: "__RequestVerificationToken", Value: SentCall.Token)).ToList();
        var parts = random.Next(3) == 0;
        var body = parts ? InParts(fields) : string.Join('&', fields.Select(f => $"{f.Name}={Uri.EscapeDataString(f.Value)}"));
        if (random.Next(10) == 0)
            body = body.Remove(random.Next(body.Length));
        return new("POST", $"/jobs/{One(MadeUpCalls.Ids)}/{step}", parts ? $"multipart/form-data; boundary={Boundary}" : "application/x-www-form-urlencoded", body);
    }

    /// <summary>Each field a part; sometimes one is a file (RFC 7578).</summary>
    private string InParts(IEnumerable<(string Name, string Value)> fields) => string.Concat(
        fields.Append((Name: "photo", Value: One(["", "no photo", "\u0000", "RIFF0000WEBP"])))
            .Select(f => $"--{Boundary}\r\nContent-Disposition: form-data; name=\"{f.Name}\"{(f.Name == "photo" ? "; filename=\"p.jpg\"" : "")}\r\n\r\n{f.Value}\r\n")) + $"--{Boundary}--\r\n";

    private T One<T>(IReadOnlyList<T> of) => of[random.Next(of.Count)];
}
