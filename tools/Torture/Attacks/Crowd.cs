namespace Torture.Attacks;

/// <summary>Two servers and the command on one book at once.</summary>
internal sealed class Crowd : IAttack
{
    public string Name => "crowd";

    public string Blows => "writers";

    public async Task Run(Round round)
    {
        var (one, other) = (await Programs.Serve(round.Folder), await Programs.Serve(round.Folder));
        using var time = new CancellationTokenSource(TimeSpan.FromSeconds(6));
        var people = new[] { one.Client, one.Client, other.Client, other.Client }.Select((c, n) => Programs.Record(c, round, $"person {n}", time.Token)).ToList();
        people.Add(Commands(round, time.Token));
        round.Blow(people.Count);
        await Task.WhenAll(people);
        foreach (var (process, client) in new[] { one, other })
        {
            process.Kill();
            await process.WaitForExitAsync();
            process.Dispose();
            client.Dispose();
        }
    }

    private static async Task Commands(Round round, CancellationToken stop)
    {
        while (!stop.IsCancellationRequested)
        {
            var line = Round.NewLine("the command");
            using var command = Programs.Start(round.Folder, "line", Round.Job, line);
            await Task.WhenAll(command.StandardOutput.ReadToEndAsync(CancellationToken.None), command.StandardError.ReadToEndAsync(CancellationToken.None), command.WaitForExitAsync(CancellationToken.None));
            round.Said(line, command.ExitCode == 0);
        }
    }
}
