using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Logging;
using Triage.Notes.Kinds;
using Triage.Service.Http;
using Triage.Service.Wire;
using Triage.Workshop;
using Triage.Workshop.Steps;

namespace Triage.Service.Jobs;

/// <summary>Carries steps out one after the other, checks that the writer saw the newest state when it says what it saw, and logs ids, never people.</summary>
internal sealed partial class StepRecorder(LiveBench bench, ILogger<StepRecorder> log)
{
    private readonly Lock writing = new();

    /// <summary>Null when the job is not in the state that the request's If-Match names.</summary>
    public StepResult? Record(HttpContext http, string id, string name, Func<JobSteps, StepResult> step)
    {
        lock (writing)
        {
            if (http.Request.Headers.IfMatch is { Count: > 0 } expected && bench.Current.Notes.Find<Job>(id) is { } job
                && !EntityTag.Names(expected, EntityTag.Of(Tagged<WireJob>.Bytes(http, WireJob.Of(job, bench.Current)))))
                return null;
            var result = step(bench.Steps);
            if (result.Refused is { } refused)
                LogRefused(name, result.Job?.Id ?? id, refused.Kind);
            else
                LogDone(name, result.Job?.Id ?? id);
            return result;
        }
    }

    [LoggerMessage(Level = LogLevel.Information, Message = "{Step} on job {Job}")]
    private partial void LogDone(string step, string job);

    [LoggerMessage(Level = LogLevel.Warning, Message = "{Step} on job {Job} refused: {Kind}")]
    private partial void LogRefused(string step, string job, RefusalKind kind);
}
