using System.Numerics;
using System.Text.Json.Nodes;

namespace Triage.Reasoning.Tests.Inference;

/// <summary>
/// A random instance of the shape of data/bn2o.md, and its answer by summing over every state of every root in whole numbers: inputs are multiples
/// of 1e-8, each factor that is not there counts as 1e8, so that all terms have one denominator and nothing is rounded.
/// </summary>
internal sealed class RandomInstance
{
    private const long One = 100_000_000;

    private readonly Random _random;
    private readonly long[][] _prior;
    private readonly long[] _leak;
    private readonly long[][][] _lambda;
    private readonly bool?[] _seen;
    private readonly long[][] _likelihood;
    private readonly bool _conditioned;

    public RandomInstance(int seed)
    {
        _random = new(seed);
        _prior = [.. Enumerable.Range(0, _random.Next(2, 7)).Select(_ => Prior())];
        _lambda = [.. Enumerable.Range(0, _random.Next(2, 11)).Select(_ => Array.ConvertAll(_prior, p => Array.ConvertAll(p, _ => _random.Next(3) == 0 ? 0 : Chance())))];
        _leak = Array.ConvertAll(_lambda, _ => _random.Next(4) == 0 ? 0 : Chance() / 10);
        _seen = Array.ConvertAll(_lambda, _ => _random.Next(3) switch { 0 => (bool?)null, 1 => true, _ => false });
        _likelihood = Array.ConvertAll(_prior, p => _random.Next(3) == 0 ? Array.ConvertAll(p, _ => _random.Next(4) == 0 ? 0 : Chance()) : []);
        _conditioned = _random.Next(2) == 0;
    }

    /// <summary>P(evidence), and of that with some root not good, times the denominator.</summary>
    public BigInteger Evidence { get; private set; }

    public BigInteger Faulty { get; private set; }

    public BigInteger Denominator { get; private set; }

    /// <summary>P(root in state, evidence and what it is conditioned on), times the denominator.</summary>
    public BigInteger[][] Joint { get; private set; } = [];

    public BigInteger Total => _conditioned ? Faulty : Evidence;

    public string Json => new JsonObject
    {
        ["instances"] = new JsonArray(new JsonObject
        {
            ["id"] = "random",
            ["roots"] = new JsonArray([.. _prior.Select((p, r) => new JsonObject { ["id"] = $"r{r}", ["states"] = new JsonArray([.. p.Select((_, s) => (JsonNode)State(s))]), ["prior"] = Numbers(p) })]),
            ["findings"] = new JsonArray([.. _leak.Select((leak, f) => new JsonObject { ["id"] = $"f{f}", ["leak"] = (decimal)leak / One, ["links"] = Links(f) })]),
            ["evidence"] = new JsonObject
            {
                ["present"] = Seen(true),
                ["absent"] = Seen(false),
                ["likelihood"] = new JsonObject(_likelihood.Select((l, r) => KeyValuePair.Create($"r{r}", (JsonNode?)Numbers(l))).Where((_, r) => _likelihood[r].Length > 0)),
            },
            ["condition_any_faulty"] = _conditioned,
        }),
    }.ToJsonString();

    public static string State(int s) => s == 0 ? "good" : $"m{s}";

    public void Solve()
    {
        Joint = Array.ConvertAll(_prior, p => new BigInteger[p.Length]);
        var factors = 2 * _prior.Length + _seen.Count(s => s is not null) * (_prior.Length + 1);
        Denominator = BigInteger.Pow(One, factors);
        Choose(0, new int[_prior.Length], 1);
    }

    private void Choose(int root, int[] states, BigInteger weight)
    {
        if (root < states.Length)
        {
            for (states[root] = 0; states[root] < _prior[root].Length; states[root]++)
            {
                var likelihood = _likelihood[root].Length > 0 ? _likelihood[root][states[root]] : One;
                Choose(root + 1, states, weight * _prior[root][states[root]] * likelihood);
            }

            return;
        }

        for (var f = 0; f < _seen.Length; f++)
        {
            if (_seen[f] is { } present)
            {
                var absent = states.Select((s, r) => (BigInteger)(One - (s > 0 ? _lambda[f][r][s] : 0))).Aggregate((BigInteger)(One - _leak[f]), (a, b) => a * b);
                weight *= present ? BigInteger.Pow(One, states.Length + 1) - absent : absent;
            }
        }

        Evidence += weight;
        Faulty += states.Any(s => s > 0) ? weight : 0;
        for (var r = 0; r < states.Length && (!_conditioned || states.Any(s => s > 0)); r++)
        {
            Joint[r][states[r]] += weight;
        }
    }

    private long[] Prior()
    {
        long[] modes = [.. Enumerable.Range(0, _random.Next(1, 4)).Select(_ => _random.Next(4) == 0 ? _random.NextInt64(100, 1000) : _random.NextInt64(1, One / 5))];
        return [One - modes.Sum(), .. modes];
    }

    private long Chance() => _random.Next(8) switch { 0 => One, 1 => 0, _ => _random.NextInt64(1, One) };

    private JsonArray Links(int f) => new(
    [
        .. _lambda[f].SelectMany((row, r) => row.Select((l, s) => (l, r, s))).Where(x => x.s > 0 && x.l > 0)
            .Select(x => new JsonObject { ["root"] = $"r{x.r}", ["mode"] = State(x.s), ["lambda"] = (decimal)x.l / One }),
    ]);

    private JsonArray Seen(bool present) => new([.. Enumerable.Range(0, _seen.Length).Where(f => _seen[f] == present).Select(f => (JsonNode)$"f{f}")]);

    private static JsonArray Numbers(long[] values) => new([.. values.Select(v => (JsonNode)((decimal)v / One))]);
}
