using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Triage.Workshop;
using Triage.Workshop.Steps;

namespace Triage.Service.Http;

/// <summary>A page as an answer.</summary>
internal static class PageResults
{
    public static IResult Of<TPage>(Dictionary<string, object?> parameters, int status = StatusCodes.Status200OK) where TPage : IComponent =>
        new RazorComponentResult<TPage>(parameters) { StatusCode = status };

    public static IResult Stop(string what, string instead, int status) =>
        Of<StopPage>(new() { ["What"] = what, ["Instead"] = instead }, status);

    public static IResult Stop(Refusal refused) => Stop(refused.What, refused.Instead, Problems.StatusOf(refused.Kind));

    /// <summary>After a form, so that loading the page again does not send it again.</summary>
    public static IResult SeeOther(HttpContext http, string address)
    {
        http.Response.Headers.Location = address;
        return Results.StatusCode(StatusCodes.Status303SeeOther);
    }

    /// <summary>A form that cannot be read is refused in its own words.</summary>
    public static StepResult Try(Func<StepResult?> step)
    {
        try
        {
            return step()!;
        }
        catch (NotUnderstoodException e)
        {
            return new() { Refused = e.Refusal };
        }
    }
}
