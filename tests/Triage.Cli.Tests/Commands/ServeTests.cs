using System.Diagnostics;
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
        var stranger = await client.GetAsync(new Uri("health", UriKind.Relative), stop.Token);
        var opened = await client.GetAsync(new Uri(address), stop.Token);
        var health = await client.GetAsync(new Uri("health", UriKind.Relative), stop.Token);
        await stop.CancelAsync();

        Assert.Equal(HttpStatusCode.Unauthorized, stranger.StatusCode);
        Assert.Equal(HttpStatusCode.OK, opened.StatusCode);
        Assert.Equal(HttpStatusCode.OK, health.StatusCode);
        Assert.Equal(0, await serving);
    }

    [Fact]
    public async Task Open_to_this_machine_it_asks_nobody_who_they_are()
    {
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(TestContext.Current.CancellationToken);
        var said = new FirstLine();

        var serving = TriageCommand.RunAsync(["serve", "--port", "0", "--open-to-this-machine", "--book", bench.Folder("small")], said, TextWriter.Null, TimeProvider.System, stop: stop.Token);
        await Task.WhenAny(said.Line, serving);
        using var client = new HttpClient();
        var health = await client.GetAsync(new Uri(new(said.ToString().Split(' ').Single(w => w.StartsWith("http://127.0.0.1:", StringComparison.Ordinal))), "/health"), stop.Token);
        await stop.CancelAsync();

        Assert.Equal(HttpStatusCode.OK, health.StatusCode);
        Assert.Equal(0, await serving);
    }

    /// <summary>Output that is kept, as a log is, holds the way in for nobody's phone.</summary>
    [Theory]
    [InlineData]
    [InlineData("--json")]
    public async Task The_pairing_code_is_said_on_a_terminal_only(params string[] json)
    {
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(TestContext.Current.CancellationToken);
        var said = new FirstLine();

        var serving = TriageCommand.RunAsync(["serve", "--port", "0", "--phone", "--phone-port", "0", "--book", bench.Folder("small"), .. json], said, TextWriter.Null, TimeProvider.System, stop: stop.Token);
        await Task.WhenAny(said.Line, serving);
        while (!said.ToString().Contains("/phones", StringComparison.Ordinal) && json.Length == 0 && !serving.IsCompleted)
            await Task.Delay(TimeSpan.FromMilliseconds(20), stop.Token);
        await stop.CancelAsync();

        Assert.Equal(0, await serving);
        Assert.Contains("https://", said.ToString(), StringComparison.Ordinal);
        Assert.DoesNotMatch("[2-9A-Z]{5}-[2-9A-Z]{5}", said.ToString());
        Assert.DoesNotContain("█", said.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Another_browser_is_let_in_by_the_address_that_the_command_prints()
    {
        var runtime = Path.Combine(bench.Folder("small"), "../run");
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(TestContext.Current.CancellationToken);
        var (said, address, before) = (new FirstLine(), new StringWriter(), new StringWriter());

        Assert.NotEqual(0, await TriageCommand.RunAsync(["address"], TextWriter.Null, before, TimeProvider.System, runtime: runtime, stop: TestContext.Current.CancellationToken));
        var serving = TriageCommand.RunAsync(["serve", "--port", "0", "--book", bench.Folder("small")], said, TextWriter.Null, TimeProvider.System, runtime: runtime, stop: stop.Token);
        await Task.WhenAny(said.Line, serving);
        var port = new Uri(said.ToString().Split(' ').Single(w => w.StartsWith("http://", StringComparison.Ordinal))).Port.ToString(CultureInfo.InvariantCulture);
        Assert.Equal(0, await TriageCommand.RunAsync(["address", "--port", port], address, TextWriter.Null, TimeProvider.System, runtime: runtime, stop: TestContext.Current.CancellationToken));
        using var client = new HttpClient();
        var opened = await client.GetAsync(new Uri(address.ToString().Split('\n')[0]), stop.Token);
        await stop.CancelAsync();

        Assert.Contains("Start it with triage serve", before.ToString(), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.OK, opened.StatusCode);
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

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task A_pipe_among_the_notes_keeps_nobody_from_ending_it(bool before)
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "Elsewhere a pipe is opened as any file is.");
        var pipe = bench.File("small", "x.md");
        if (before)
            Run("mkfifo", pipe);
        var start = new ProcessStartInfo("dotnet", [Path.Combine(AppContext.BaseDirectory, "triage.dll"), "serve", "--port", "0", "--book", bench.Folder("small")]) { RedirectStandardOutput = true, RedirectStandardError = true };
        using var server = Process.Start(start)!;
        Assert.NotNull(await server.StandardOutput.ReadLineAsync(TestContext.Current.CancellationToken));
        if (!before)
            Run("mkfifo", pipe);
        await Task.Delay(500, TestContext.Current.CancellationToken);

        Run("kill", "-TERM", server.Id.ToString(CultureInfo.InvariantCulture));

        using var limit = CancellationTokenSource.CreateLinkedTokenSource(TestContext.Current.CancellationToken);
        limit.CancelAfter(TimeSpan.FromSeconds(60));
        await server.WaitForExitAsync(limit.Token);
    }

    private static void Run(string command, params string[] arguments)
    {
        using var process = Process.Start(command, arguments);
        process.WaitForExit();
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
