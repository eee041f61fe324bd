using System.Collections.Immutable;
using System.Globalization;
using Triage.Notes.Kinds;
using Triage.Workshop;
using Triage.Workshop.Exchange.Importing;

namespace Triage.Tools.Soybean;

/// <summary>The cases as jobs of an open bench, each with the fold in which it is held out.</summary>
internal sealed class SoybeanCases : IAsyncDisposable
{
    private readonly LiveBench live;

    private SoybeanCases(LiveBench live, ImmutableArray<ImmutableArray<Job>> folds)
    {
        (this.live, Folds) = (live, folds);
        Causes = [.. Bench.Notes.Of<Fault>().OrderBy(f => f.Name, StringComparer.Ordinal).Select(f => f.Id)];
    }

    public Bench Bench => live.Current;

    /// <summary>Fault ids in the order of the baselines' classes: ties go to the first.</summary>
    public ImmutableArray<string> Causes { get; }

    /// <summary>Jobs held out together.</summary>
    public ImmutableArray<ImmutableArray<Job>> Folds { get; }

    /// <param name="data">Folder with the table, its column map and its folds.</param>
    /// <param name="folder">Empty folder for the notes.</param>
    /// <exception cref="InvalidDataException">The table was not brought in whole.</exception>
    public static SoybeanCases BringIn(string data, string folder)
    {
        var map = ColumnMapFile.Read(Path.Combine(data, "soybean-map.json"));
        if (map.Refused is not null || map.Map is null)
            throw new InvalidDataException(map.Refused?.ToString());
        var result = Import.Run(Path.Combine(data, "soybean.csv"), map.Map, folder);
        if (result.Refused is not null || result.Rejected > 0)
            throw new InvalidDataException(result.Refused?.ToString() ?? $"{result.Rejected} rows were rejected: {result.RejectsFile}");
        var live = LiveBench.Open(new() { Books = [new("soybean", folder)], Watch = false });
        return new(live, Held(data, live.Current, map.Map.Id.Prefix));
    }

    private static ImmutableArray<ImmutableArray<Job>> Held(string data, Bench bench, string prefix) =>
        [.. File.ReadLines(Path.Combine(data, "soybean-folds.csv")).Skip(1)
            .Select(line => line.Split(',').Select(n => int.Parse(n, CultureInfo.InvariantCulture)).ToArray())
            .GroupBy(row => row[1], row => bench.Notes.Find<Job>(prefix + (row[0] + 1).ToString("00000", CultureInfo.InvariantCulture))!)
            .OrderBy(fold => fold.Key)
            .Select(fold => fold.ToImmutableArray())];

    public ValueTask DisposeAsync() => live.DisposeAsync();
}
