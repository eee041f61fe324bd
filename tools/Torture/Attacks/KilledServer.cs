namespace Torture.Attacks;

/// <summary>SIGKILL of the server while three people record.</summary>
internal sealed class KilledServer : IAttack
{
    private const int Kills = 3;

    public string Name => "server";

    public string Blows => "kills";

    public async Task Run(Round round)
    {
        for (var kill = 0; kill < Kills; kill++)
        {
            var (server, client) = await Programs.Serve(round.Folder);
            using (server)
            using (client)
            {
                var people = Enumerable.Range(0, 3).Select(n => Programs.Record(client, round, $"person {n}", CancellationToken.None)).ToList();
                await Task.Delay(round.Random.Next(50, 4000));
                server.Kill();
                round.Blow();
                await Task.WhenAll(people);
                await server.WaitForExitAsync();
            }
        }
    }
}
