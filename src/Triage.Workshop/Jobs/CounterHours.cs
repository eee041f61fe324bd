using Triage.Notes.Kinds;

namespace Triage.Workshop.Jobs;

/// <summary>Whether the owner still stands at the counter.</summary>
public static class CounterHours
{
    /// <summary>Until something is done on the bench or somebody says that the owner has left; never where there is no owner to ask.</summary>
    public static bool IsOpen(Job job) => job is { NoOwner: false, IsOpen: true } && job.Log.All(e => e is Saw or Skipped or Secured or QuickLine);
}
