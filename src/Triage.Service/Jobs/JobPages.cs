using System.Collections.Immutable;
using Triage.Notes.Kinds;

namespace Triage.Service.Jobs;

/// <summary>The pages of a job in the order of its navigation: a new one is a component in <c>Jobs</c> and a line here.</summary>
internal static class JobPages
{
    public static ImmutableArray<JobSubPage> All { get; } =
    [
        JobSubPage.Of<JobPage>("", "Job") with { WhenClosed = true },
        JobSubPage.Of<FindingsPage>("findings", "Findings"),
        JobSubPage.Of<CausesPage>("causes", "Causes"),
        JobSubPage.Of<StepsPage>("steps", "Steps"),
        JobSubPage.Of<ReadingsPage>("readings", "Readings"),
        JobSubPage.Of<PartsPage>("parts", "Parts"),
        JobSubPage.Of<StripDownPage>("strip-down", "Strip-down"),
        JobSubPage.Of<DrawingsOfJobPage>("drawings", "Drawings") with { WhenClosed = true },
        JobSubPage.Of<NotListedPage>("not-listed", "Not listed"),
        JobSubPage.Of<AgreedPage>("agreed", "Agreed"),
        JobSubPage.Of<LogPage>("log", "Log") with { WhenClosed = true },
        JobSubPage.Of<PrintPage>("print", "Print") with { WhenClosed = true },
        JobSubPage.Of<ClosePage>("close", "Close"),
    ];

    /// <param name="page">Address below the job's: the slug, and after a slash what of it is meant.</param>
    public static JobSubPage? Find(string page) => All.FirstOrDefault(p => p.Slug == page.Split('/')[0]);

    public static IEnumerable<JobSubPage> Of(Job job) => All.Where(p => job.IsOpen || p.WhenClosed);
}
