using System.Diagnostics;
using System.Net.Http.Json;

namespace Torture;

/// <summary>The product's own command, as processes.</summary>
internal static class Programs
{
    public static Process Start(string folder, params string[] arguments) =>
        Process.Start(new ProcessStartInfo("dotnet", [Path.Combine(AppContext.BaseDirectory, "triage.dll"), .. arguments, "--book", $"small={folder}"]) { RedirectStandardOutput = true, RedirectStandardError = true })!;

    /// <summary>A server that answers, and a client of it.</summary>
    public static async Task<(Process Process, HttpClient Client)> Serve(string folder)
    {
        var server = Start(folder, "serve", "--port", "0", "--open-to-this-machine");
        var said = await server.StandardOutput.ReadLineAsync() ?? throw new InvalidOperationException(await server.StandardError.ReadToEndAsync());
        _ = server.StandardOutput.ReadToEndAsync();
        _ = server.StandardError.ReadToEndAsync();
        return (server, new() { BaseAddress = new(said.Split(' ').First(w => w.StartsWith("http://", StringComparison.Ordinal))), Timeout = TimeSpan.FromSeconds(30) });
    }

    /// <summary>Records lines until the server is gone or it is time.</summary>
    public static async Task Record(HttpClient client, Round round, string who, CancellationToken stop)
    {
        while (!stop.IsCancellationRequested)
        {
            var line = Round.NewLine(who);
            try
            {
                using var answer = await client.PostAsJsonAsync($"api/jobs/{Round.Job}/line", new { text = line }, CancellationToken.None);
                round.Said(line, answer.IsSuccessStatusCode);
            }
            catch (Exception e) when (e is HttpRequestException or OperationCanceledException)
            {
                round.Said(line, acknowledged: false);
                return;
            }
        }
    }
}
