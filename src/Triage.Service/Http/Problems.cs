using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Triage.Workshop;

namespace Triage.Service.Http;

/// <summary>Refusals as problem details (RFC 9457): what is wrong, and what to do instead.</summary>
internal static class Problems
{
    public static int StatusOf(RefusalKind kind) => kind switch
    {
        RefusalKind.NotFound => StatusCodes.Status404NotFound,
        RefusalKind.NotUnderstood => StatusCodes.Status422UnprocessableEntity,
        RefusalKind.ChangedMeanwhile => StatusCodes.Status409Conflict,
        RefusalKind.NotAllowed => StatusCodes.Status403Forbidden,
        RefusalKind.CannotWrite => StatusCodes.Status503ServiceUnavailable,
    };

    public static ProblemHttpResult Of(Refusal refused) => Of(StatusOf(refused.Kind), refused.What, refused.Instead, refused.KeptAt);

    public static ProblemHttpResult Stale(string job) => Of(
        StatusCodes.Status412PreconditionFailed, $"Job {job} changed since you read it.", "Read it again, then repeat the step with its new ETag if it is still right.", null);

    public static ProblemHttpResult Of(int status, string what, string instead, string? keptAt) => TypedResults.Problem(
        title: what,
        detail: instead,
        statusCode: status,
        extensions: keptAt is null ? null : new Dictionary<string, object?> { ["keptAt"] = keptAt });
}
