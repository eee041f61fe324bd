using Microsoft.AspNetCore.Http;
using Triage.Workshop.Steps;

namespace Triage.Service.Pages.Forms;

/// <summary>A form that was refused: shown again where it was, with what was typed.</summary>
/// <param name="Step">Name of the step.</param>
/// <param name="Fields">As typed.</param>
public sealed record Sent(string Step, IFormCollection Fields, Refusal Refused)
{
    private string About => Fields["about"].ToString();

    public bool Was(string step, string about) => Step == step && About == about;
}
