using System.Collections.Immutable;
using Triage.Reasoning.Networks;

namespace Triage.Reasoning.Planning;

/// <summary>
/// What tests and rounds can show. A round is looked ahead at by the first finding that is out of order, those that tell most now
/// taken first: "all normal", or "finding i has value v and those before it are normal". That divides all its outcomes, with
/// P = Π P(earlier ones normal | set) · P(v | set), in as many as there are abnormal values and one; what the later ones show besides is
/// left for when it is seen, so that a plan never costs less than it says. A finding is revealed once.
/// </summary>
internal sealed class Looks
{
    private readonly ImmutableArray<Finding>[] _reveals;
    private readonly int[][] _sharing;
    private readonly Dictionary<string, int[]> _revealing;
    private readonly Dictionary<string, LikelihoodRow[]> _rows = [];
    private readonly Look?[] _whole;
    private readonly Dictionary<(int Option, long Known), Look> _parts = [];

    public Looks(Option[] options, BeliefSpace space)
    {
        var setsWith = space.SetsWith();
        _reveals = Array.ConvertAll(options, Revealed);
        _revealing = _reveals.Index().SelectMany(o => o.Item.Select(f => (f.Id, o.Index))).GroupBy(f => f.Id, f => f.Index).ToDictionary(f => f.Key, f => f.ToArray());
        foreach (var finding in _reveals.SelectMany(f => f))
        {
            _ = _rows.TryGetValue(finding.Id, out _) || _rows.TryAdd(finding.Id, space.Likelihood(finding, setsWith));
        }

        _reveals = Array.ConvertAll(_reveals, r => r.Length < 2 ? r : [.. r.OrderByDescending(f => InformationGain.Bits(_rows[f.Id], space.Prior))]);
        _sharing = [.. _reveals.Select((r, o) => r.SelectMany(f => _revealing[f.Id]).Where(other => other != o).Distinct().ToArray())];
        _whole = [.. options.Select((o, i) => Whole(o, i))];
    }

    /// <summary>Whether an option is a test or round.</summary>
    public bool Has(int option) => _whole[option] is not null;

    /// <summary>P(value | each fault set) of one finding, by value.</summary>
    public LikelihoodRow[] Rows(Finding finding) => _rows[finding.Id];

    /// <summary>What a test or round that is ready can still show.</summary>
    public Look Of(int option, bool[] done)
    {
        var known = _sharing[option].Length == 0 ? 0 : Known(option, done);
        if (known == 0)
        {
            return _whole[option]!;
        }

        return _parts.TryGetValue((option, known), out var part) ? part : _parts[(option, known)] = Round(_whole.Length + _parts.Count, option, known);
    }

    /// <summary>Marks an option done, and with it every other that can show nothing more.</summary>
    public void Do(int option, bool[] done)
    {
        done[option] = true;
        foreach (var other in _sharing[option])
        {
            done[other] = done[other] || _reveals[other].All(f => IsKnown(f, done));
        }
    }

    private static ImmutableArray<Finding> Revealed(Option option) => option switch
    {
        TestOption test => [test.Reveals],
        RoundOption round => round.Reveals,
        _ => [],
    };

    public bool IsKnown(Finding finding, bool[] done) => Array.Exists(_revealing[finding.Id], o => done[o]);

    /// <summary>A bit for each finding of a round that something done has shown.</summary>
    private long Known(int option, bool[] done)
    {
        var known = 0L;
        for (var i = 0; i < _reveals[option].Length; i++)
        {
            known |= IsKnown(_reveals[option][i], done) ? 1L << i : 0;
        }

        return known;
    }

    private Look? Whole(Option option, int number) => option switch
    {
        TestOption test => new(number, [.. test.Reveals.Values.Select(v => (test.Reveals.Id, v))], _rows[test.Reveals.Id]),
        RoundOption => Round(number, number, known: 0),
        _ => null,
    };

    private Look Round(int number, int option, long known)
    {
        var shows = new List<(string?, string)>();
        var rows = new List<LikelihoodRow>();
        LikelihoodRow? normal = null;
        foreach (var finding in _reveals[option].Where((_, i) => (known >> i & 1) == 0))
        {
            var own = _rows[finding.Id];
            for (var value = 1; value < own.Length; value++)
            {
                shows.Add((finding.Id, finding.Values[value]));
                rows.Add(normal?.And(own[value]) ?? own[value]);
            }

            normal = normal?.And(own[0]) ?? own[0];
        }

        return new(number, [(null, Look.AllNormal), .. shows], [normal!, .. rows]);
    }
}
