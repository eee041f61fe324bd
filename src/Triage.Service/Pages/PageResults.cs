using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Triage.Service.Endpoints;
using Triage.Workshop;

namespace Triage.Service.Pages;

/// <summary>A page as an answer.</summary>
internal static class PageResults
{
    public static IResult Of<TPage>(Dictionary<string, object?> parameters, int status = StatusCodes.Status200OK) where TPage : IComponent =>
        new RazorComponentResult<TPage>(parameters) { StatusCode = status };

    public static IResult Stop(string what, string instead, int status) =>
        Of<StopPage>(new() { ["What"] = what, ["Instead"] = instead }, status);

    public static IResult Stop(Refusal refused) => Stop(refused.What, refused.Instead, Problems.StatusOf(refused.Kind));
}
