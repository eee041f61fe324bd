using System.Collections.Concurrent;
using System.Security.Cryptography;
using Triage.Workshop;
using Triage.Workshop.Books;
using Triage.Workshop.Steps;

namespace Torture;

/// <summary>A fresh copy of the small book, a bench that looks on, and what was acknowledged there.</summary>
internal sealed class Round : IDisposable
{
    /// <summary>The open job on which lines are recorded.</summary>
    public const string Job = "2026-001";

    private static int numbers;

    private readonly string place = Directory.CreateTempSubdirectory("torture-").FullName;
    private int blows, refused;

    private Round(string template, int seed)
    {
        Random = new(seed);
        Directory.CreateDirectory(Folder);
        foreach (var file in Directory.GetFiles(template))
            File.Copy(file, Path.Combine(Folder, Path.GetFileName(file)));
    }

    public string Folder => Path.Combine(place, "book");

    /// <summary>A folder beside the book.</summary>
    public string Outside => Directory.CreateDirectory(Path.Combine(place, "outside")).FullName;

    public Random Random { get; }

    /// <summary>Lines that were acknowledged.</summary>
    public ConcurrentBag<string> Lines { get; } = [];

    /// <summary>Photos that were acknowledged, by SHA-256.</summary>
    public ConcurrentBag<string> Photos { get; } = [];

    /// <summary>Texts that an editor saved.</summary>
    public ConcurrentBag<string> Saved { get; } = [];

    /// <summary>Acknowledged in another place than this book, where the attack itself looks for it.</summary>
    public int Elsewhere { get; set; }

    /// <summary>What cannot be found after this round, counted by the attack itself.</summary>
    public int Lost { get; set; }

    public static async Task<Tally> Play(IAttack attack, string template, int seed)
    {
        using var round = new Round(template, seed);
        await using var onlooker = round.Open(watch: true);
        await attack.Run(round);
        round.TeachSomething();
        var proof = await Proof.Of(round, onlooker);
        foreach (var said in proof.Said)
            Console.Error.WriteLine($"{attack.Name}, seed {seed}: {said}");
        return new(1, round.blows, round.Lines.Count + round.Photos.Count + round.Saved.Count + round.Elsewhere, round.refused, proof.Lost + round.Lost, proof.Unread, proof.Unequal);
    }

    public LiveBench Open(bool watch = false, Disk? disk = null, TimeProvider? clock = null, string? folder = null) => LiveBench.Open(new()
    {
        Books = [new("small", folder ?? Folder, Trust.Own, Writable: true)],
        Clock = clock ?? TimeProvider.System,
        Watch = watch,
        Disk = disk ?? Disk.Real,
    });

    /// <summary>A line that no other is like.</summary>
    public static string NewLine(string who) => FormattableString.Invariant($"{who} wrote line {Interlocked.Increment(ref numbers)}.");

    public void Blow(int count = 1) => Interlocked.Add(ref blows, count);

    /// <summary>Records a line, with a photo now and then.</summary>
    public bool Record(LiveBench bench, string who)
    {
        var line = NewLine(who);
        byte[]? photo = numbers % 5 == 0 ? [0xFF, 0xD8, 0xFF, 0xE0, .. RandomNumberGenerator.GetBytes(20_000)] : null;
        var done = photo is null ? bench.Steps.Line(Job, line) : bench.Steps.Line(Job, line, photo);
        Said(line, done.Refused is null);
        if (photo is not null && done.Refused is null)
            Photos.Add(Convert.ToHexString(SHA256.HashData(photo)));
        return done.Refused is null;
    }

    public void Said(string line, bool acknowledged)
    {
        if (acknowledged)
            Lines.Add(line);
        else
            Interlocked.Increment(ref refused);
    }

    public void Dispose() => Directory.Delete(place, recursive: true);

    /// <summary>A closed job, so that there is something to learn.</summary>
    private void TeachSomething()
    {
        using var bench = new Opened(Open());
        var taken = bench.Live.Steps.TakeIn(new() { Machine = "aldine-c1", Complaint = "no chime at all" }).Job!;
        var closed = bench.Live.Steps.Close(taken.Id, new() { Outcome = Triage.Notes.Kinds.JobOutcome.Mended, Causes = [new("backup-cap-shorted", Triage.Notes.Kinds.Grade.Measured)] });
        if (closed.Refused is { } why)
            throw new InvalidOperationException(why.ToString());
    }
}
