using Microsoft.AspNetCore.Http;
using Triage.Workshop;

namespace Triage.Service.Http;

/// <summary>A form that was refused: shown again where it was, with what was typed.</summary>
/// <param name="Step">Name of the step.</param>
/// <param name="Fields">As typed.</param>
public sealed record Sent(string Step, IFormCollection Fields, Refusal Refused)
{
    /// <summary>What a person typed, as far as it can be said in one line.</summary>
    public IEnumerable<(string Field, string Typed)> Typed =>
        Fields.Where(f => !f.Key.StartsWith("__", StringComparison.Ordinal) && f.Key is not ("about" or "back" or "page" or "version" or "then" or "at" or "entry" or "entries") && f.Value.ToString().Length > 0)
            .Select(f => (f.Key.Replace('-', ' '), f.Value.ToString()));

    private string About => Fields["about"].ToString();

    public bool Was(string step, string about) => Step == step && About == about;
}
