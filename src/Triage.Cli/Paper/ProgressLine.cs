using Triage.Notes;

namespace Triage.Cli.Paper;

/// <summary>Says how far something is, after the first second and then every other.</summary>
internal sealed class ProgressLine<T>(TextWriter to, TimeProvider clock, Func<T, string> words) : IProgress<T>
{
    private static readonly TimeSpan First = TimeSpan.FromSeconds(1), Then = TimeSpan.FromSeconds(2);

    private long last = clock.GetTimestamp();
    private TimeSpan wait = First;

    public void Report(T value)
    {
        if (clock.GetElapsedTime(last) < wait)
            return;
        (last, wait) = (clock.GetTimestamp(), Then);
        to.WriteLine(Printable.Line(words(value)));
    }
}
