namespace Torture.Attacks;

/// <summary>SIGKILL of the command, at any moment of its short life.</summary>
internal sealed class KilledCommand : IAttack
{
    private const int Commands = 6;

    public string Name => "command";

    public string Blows => "kills";

    public Task Run(Round round) => Parallel.ForEachAsync(Enumerable.Range(0, Commands).Select(_ => round.Random.Next(200, 6000)).ToList(), new ParallelOptions { MaxDegreeOfParallelism = 3 }, async (life, _) =>
    {
        var line = Round.NewLine("the command");
        using var command = Programs.Start(round.Folder, "line", Round.Job, line);
        var (said, wrong) = (command.StandardOutput.ReadToEndAsync(CancellationToken.None), command.StandardError.ReadToEndAsync(CancellationToken.None));
        var ended = command.WaitForExitAsync(CancellationToken.None);
        if (await Task.WhenAny(ended, Task.Delay(life, CancellationToken.None)) != ended)
        {
            command.Kill();
            round.Blow();
        }

        await Task.WhenAll(ended, said, wrong);
        round.Said(line, command.ExitCode == 0);
    });
}
