using System.Collections.Immutable;
using Triage.Notes.Kinds;
using Triage.Workshop.Books;
using Triage.Workshop.Steps;

namespace Triage.Workshop;

/// <summary>The open bench: its books, watched, the newest snapshot of what they say, and everything that can be done at it.</summary>
public sealed class LiveBench : IAsyncDisposable
{
    private LiveBench(LiveBooks books)
    {
        OnDisk = books;
        Texts = new(books);
        Setup = new(books);
        Instruments = new(Setup);
        Drawer = new(books, Setup);
        Steps = new(books, Drawer);
    }

    internal LiveBooks OnDisk { get; }

    /// <inheritdoc cref="LiveBooks.Current"/>
    public Bench Current => OnDisk.Current;

    /// <summary>The job's steps, from taking in to following up.</summary>
    public JobSteps Steps { get; }

    /// <summary>New notes from where they were missed.</summary>
    public Listing Listing => new(OnDisk);

    /// <summary>Notes changed as text.</summary>
    public NoteEditing Texts { get; }

    /// <summary>What was replaced, seen and brought back.</summary>
    public NoteHistory History => new(OnDisk, Texts);

    /// <summary>What the bench says of itself, changed.</summary>
    public SettingsEditing Setup { get; }

    /// <summary>Meters and testers, set up once.</summary>
    public InstrumentEditing Instruments { get; }

    /// <summary>Parts on hand.</summary>
    public Drawer Drawer { get; }

    /// <summary>Drawings put to devices.</summary>
    public DrawingEditing Drawings => new(OnDisk);

    /// <inheritdoc cref="LiveBooks.Books"/>
    public ImmutableArray<BookSource> Books => OnDisk.Books;

    public TimeProvider Clock => OnDisk.Clock;

    /// <inheritdoc cref="LiveBooks.Changed"/>
    public event Action<Bench>? Changed
    {
        add => OnDisk.Changed += value;
        remove => OnDisk.Changed -= value;
    }

    /// <inheritdoc cref="LiveBooks.Aside"/>
    public string? Aside => OnDisk.Aside;

    /// <inheritdoc cref="LiveBooks.Watching"/>
    public bool? Watching => OnDisk.Watching;

    /// <inheritdoc cref="LiveBooks.Open"/>
    public static LiveBench Open(BenchOptions options) => new(LiveBooks.Open(options));

    /// <inheritdoc cref="LiveBooks.Rescan"/>
    public void Rescan() => OnDisk.Rescan();

    /// <inheritdoc cref="DrawingFiles.Of"/>
    public byte[]? DrawingOf(Device device, int number) => DrawingFiles.Of(OnDisk, device, number);

    public ValueTask DisposeAsync() => OnDisk.DisposeAsync();
}
