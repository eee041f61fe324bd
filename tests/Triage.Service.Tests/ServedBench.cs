using System.Collections.Concurrent;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Time.Testing;
using Triage.Service.Owner;
using Triage.Service.Phones;
using Triage.Workshop;
using Triage.Workshop.Books;
using Triage.Workshop.Tests;

namespace Triage.Service.Tests;

/// <summary>The common book, only read, and a copy of the demo book in a temporary folder, served for real on a free port.</summary>
public sealed class ServedBench : IAsyncDisposable
{
    private readonly string folder;
    private readonly PhoneOptions? phone;
    private readonly OwnerKey? owner;
    private WebApplication app;

    private ServedBench(string folder, LiveBench live, WebApplication app, Uri address, ConcurrentQueue<string> log, PhoneOptions? phone, OwnerKey? owner) =>
        (this.folder, Live, this.app, Address, Log, this.phone, this.owner) = (folder, live, app, address, log, phone, owner);

    public LiveBench Live { get; }

    public Uri Address { get; }

    public ConcurrentQueue<string> Log { get; }

    /// <summary>Folder with the common book and the demo book as they are kept.</summary>
    public static string Knowledge { get; } = Path.Combine(Root(AppContext.BaseDirectory), "kb");

    /// <summary>Stands still unless moved on.</summary>
    public FakeTimeProvider Clock => (FakeTimeProvider)Live.Clock;

    public string DemoFolder => Path.Combine(folder, "demo");

    /// <param name="prepare">Changes the copied demo book before it is opened.</param>
    /// <param name="phone">Lets phones in.</param>
    /// <param name="owner">Null: open to this machine.</param>
    public static async Task<ServedBench> Start(Action<string>? prepare = null, PhoneOptions? phone = null, OwnerKey? owner = null)
    {
        var folder = Directory.CreateTempSubdirectory("bench-").FullName;
        BookCopy.All(Path.Combine(Knowledge, "demo"), Path.Combine(folder, "demo"));
        prepare?.Invoke(Path.Combine(folder, "demo"));
        var live = LiveBench.Open(new()
        {
            Books = [new("demo", Path.Combine(folder, "demo"), Trust.Own, Writable: true), new("common", Path.Combine(Knowledge, "common"), Trust.Known)],
            Clock = new FakeTimeProvider(new DateTimeOffset(2026, 11, 2, 9, 0, 0, TimeSpan.Zero)),
            Watch = false,
            Fits = SharedFits.OfAll,
        });
        var log = new ConcurrentQueue<string>();
        var options = Options(0, log) with { Phone = phone, Owner = owner };
        var app = BenchServer.Build(live, options);
        return new(folder, live, app, await BenchServer.StartAsync(app, options), log, phone, owner);
    }

    /// <summary>Stops the server and starts another at the same address: all it held in memory is gone.</summary>
    public async Task Restart()
    {
        await app.DisposeAsync();
        var options = Options(Address.Port, Log) with { Phone = phone, Owner = owner };
        app = BenchServer.Build(Live, options);
        await BenchServer.StartAsync(app, options);
    }

    /// <summary>One that lets one browser of the owner in.</summary>
    public Uri AnotherAddress() => owner!.Address(Address.Port, Clock.GetUtcNow());

    /// <summary>A new code for one phone, with the encrypted side's address on this machine.</summary>
    public Invitation Invite()
    {
        var invitation = BenchServer.Invite(app)!;
        return invitation with { Address = new UriBuilder(invitation.Address) { Host = "127.0.0.1" }.Uri };
    }

    private static ServerOptions Options(int port, ConcurrentQueue<string> log) =>
        new() { Port = port, Logging = l => l.SetMinimumLevel(LogLevel.Information).AddProvider(new Kept(log)) };

    public async ValueTask DisposeAsync()
    {
        await app.DisposeAsync();
        await Live.DisposeAsync();
        Directory.Delete(folder, recursive: true);
    }

    private static string Root(string folder) =>
        File.Exists(Path.Combine(folder, "Triage.sln")) ? folder : Root(Path.GetDirectoryName(folder) ?? throw new DirectoryNotFoundException("No Triage.sln above the tests."));

    private sealed class Kept(ConcurrentQueue<string> lines) : ILoggerProvider, ILogger
    {
        public ILogger CreateLogger(string categoryName) => this;

        public IDisposable? BeginScope<TState>(TState state) where TState : notnull => null;

        public bool IsEnabled(LogLevel logLevel) => true;

        public void Log<TState>(LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter) =>
            lines.Enqueue($"{formatter(state, exception)} {exception}");

        public void Dispose()
        {
        }
    }
}
