namespace Triage.Workshop.Tests.Store;

/// <summary>Keeps a file looking as if it were being saved, however slow the machine is: its time stays a little ahead of the clock.</summary>
internal sealed class StillSaving : IDisposable
{
    private readonly CancellationTokenSource done = new();
    private readonly Thread touching;

    public StillSaving(string file)
    {
        Touch(file);
        touching = new(() =>
        {
            while (!done.Token.WaitHandle.WaitOne(20))
                Touch(file);
        });
        touching.Start();
    }

    public void Dispose()
    {
        done.Cancel();
        touching.Join();
        done.Dispose();
    }

    private static void Touch(string file) => File.SetLastWriteTimeUtc(file, DateTime.UtcNow.AddSeconds(0.9));
}
