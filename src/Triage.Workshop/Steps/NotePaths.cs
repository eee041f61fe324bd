using System.Globalization;
using Triage.Notes.Kinds;

namespace Triage.Workshop.Steps;

/// <summary>Where the bench puts the notes it writes itself.</summary>
internal static class NotePaths
{
    public static string Of(Job job) => $"jobs/{(job.Opened ?? default).Year.ToString("0000", CultureInfo.InvariantCulture)}/{job.Id}.md";

    public static string Of(Fault fault) => $"faults/{fault.Id}.md";
}
