using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Http;
using Triage.Service.Http;

namespace Triage.Service.Jobs;

/// <summary>One page of a job. Its component takes a <c>JobView</c> as <c>View</c> and a refused form as <c>Sent</c>.</summary>
/// <param name="Slug">Last part of its address; empty for the main page.</param>
/// <param name="Name">As the job's navigation says it.</param>
/// <param name="Show">Answers with the page, given its parameters and the status.</param>
internal sealed record JobSubPage(string Slug, string Name, Func<Dictionary<string, object?>, int, IResult> Show)
{
    /// <summary>Whether a closed job has it too.</summary>
    public bool WhenClosed { get; init; }

    public static JobSubPage Of<TPage>(string slug, string name) where TPage : IComponent => new(slug, name, PageResults.Of<TPage>);
}
