using System.Collections.Immutable;
using Triage.Reasoning.Networks;

namespace Triage.Reasoning.Inference;

/// <summary>A compiled network in the making.</summary>
internal sealed class NetworkDraft
{
    private readonly List<Bit> _bits = [];
    private readonly List<NominalFactor> _nominals = [];
    private double _logAllGoodBits;

    public NetworkDraft(Network network, ImmutableArray<ActionTaken> actions)
    {
        var named = actions.SelectMany(a => a.Clears.Select(c => (c.Root, c.State))).ToHashSet();
        var untouched = Enumerable.Range(0, network.Roots.Select(r => r.Prior.Length).DefaultIfEmpty().Max()).Select(state => CourseOfEvents.Untouched(state, actions)).ToArray();
        Courses = new List<CourseDraft>[network.Roots.Length];
        for (var r = 0; r < Courses.Length; r++)
        {
            var prior = network.Roots[r].Prior;
            var courses = Courses[r] = new(prior.Length);
            for (var state = 0; state < prior.Length; state++)
            {
                if (named.Contains((r, state)))
                {
                    var p = prior[state];
                    courses.AddRange(CourseOfEvents.From(r, state, actions).Select(c => new CourseDraft(c, Math.Log(p * c.Chance))));
                }
                else
                {
                    courses.Add(new CourseDraft(untouched[state], Math.Log(prior[state])));
                }
            }
        }
    }

    /// <summary>By root; the first is that it was good.</summary>
    public List<CourseDraft>[] Courses { get; }

    /// <summary>Log of everything that no root's course changes.</summary>
    public double LogConstant { get; set; }

    public int AddBit(Bit bit)
    {
        _bits.Add(bit);
        _logAllGoodBits += Math.Log(bit.LeakP);
        return _bits.Count - 1;
    }

    public int AddNominal(NominalFactor nominal)
    {
        _nominals.Add(nominal);
        return _nominals.Count - 1;
    }

    /// <summary>Courses that did not happen.</summary>
    public void Exclude(Func<CourseOfEvents, bool> seen)
    {
        foreach (var course in Courses.SelectMany(c => c).Where(c => seen(c.Events)))
        {
            course.LogWeight = double.NegativeInfinity;
        }
    }

    /// <summary>At least one of some courses did happen.</summary>
    public void Need(Func<CourseOfEvents, bool> explains)
    {
        var bit = AddBit(new Bit(1, 0, Certain: true));
        foreach (var course in Courses.SelectMany(c => c).Where(c => explains(c.Events)))
        {
            course.Explain(bit, 0, 1);
        }
    }

    /// <summary>Log of P(evidence so far, every root good).</summary>
    public double LogAllGood()
    {
        var log = LogConstant + Courses.Sum(c => c[0].LogWeight) + _nominals.Sum(n => Math.Log(n.Ambient)) + _logAllGoodBits;
        return double.IsNaN(log) ? double.NegativeInfinity : log;
    }

    public CompiledNetwork Finish(double logAllGood)
    {
        var roots = Array.ConvertAll(Courses, Normalise);
        return ImpliedBits.Drop(new CompiledNetwork
        {
            Roots = roots,
            Bits = [.. _bits],
            Nominals = [.. _nominals],
            LogConstant = LogConstant,
            LogAllGood = logAllGood,
        });
    }

    private CompiledRoot Normalise(List<CourseDraft> courses)
    {
        var top = courses.Max(c => c.LogWeight);
        if (double.IsNegativeInfinity(top))
        {
            LogConstant = top;
            return new([.. courses.Select(c => c.Finish(top))]);
        }

        var logSum = top + Math.Log(courses.Sum(c => Math.Exp(c.LogWeight - top)));
        LogConstant += logSum;
        return new([.. courses.Where(c => c.LogWeight > double.NegativeInfinity || c.Events.State == 0).Select(c => c.Finish(c.LogWeight - logSum))]);
    }
}
