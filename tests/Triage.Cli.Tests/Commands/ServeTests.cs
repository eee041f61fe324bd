using System.Globalization;
using System.Net;
using System.Net.Sockets;

namespace Triage.Cli.Tests.Commands;

/// <summary>The bench served from the command line.</summary>
public sealed class ServeTests : IDisposable
{
    private readonly TestBench bench = TestBench.Small();

    public void Dispose() => bench.Dispose();

    [Fact]
    public async Task Says_its_address_answers_there_and_ends_when_stopped()
    {
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(TestContext.Current.CancellationToken);
        var said = new FirstLine();

        var serving = TriageCommand.RunAsync(["serve", "--port", "0", "--book", bench.Folder("small")], said, TextWriter.Null, TimeProvider.System, stop: stop.Token);
        await Task.WhenAny(said.Line, serving);
        var address = said.ToString().Split(' ').Single(w => w.StartsWith("http://127.0.0.1:", StringComparison.Ordinal));
        using var client = new HttpClient { BaseAddress = new(address) };
        var health = await client.GetAsync(new Uri("health", UriKind.Relative), stop.Token);
        await stop.CancelAsync();

        Assert.Equal(HttpStatusCode.OK, health.StatusCode);
        Assert.Equal(0, await serving);
    }

    [Fact]
    public async Task A_port_in_use_is_said()
    {
        using var taken = new TcpListener(IPAddress.Loopback, 0);
        taken.Start();
        var port = ((IPEndPoint)taken.LocalEndpoint).Port.ToString(CultureInfo.InvariantCulture);

        var said = await bench.Run("serve", "--port", port);

        Assert.Equal(5, said.Code);
        Assert.StartsWith($"Port {port} is in use", said.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_port_that_is_none_is_refused()
    {
        var said = await bench.Run("serve", "--port", "70000");

        Assert.Equal((3, "70000 is no port. Choose one from 1024 to 65535, or 0 for any that is free."), (said.Code, said.Error));
    }

    private sealed class FirstLine : StringWriter
    {
        private readonly TaskCompletionSource<string> line = new(TaskCreationOptions.RunContinuationsAsynchronously);

        public Task<string> Line => line.Task;

        public override void Write(string? value)
        {
            base.Write(value);
            if (ToString().Contains('\n', StringComparison.Ordinal))
                line.TrySetResult(ToString());
        }
    }
}
