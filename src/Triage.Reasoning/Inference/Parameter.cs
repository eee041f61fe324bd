using System.Collections.Immutable;
using Triage.Reasoning.Networks;

namespace Triage.Reasoning.Inference;

/// <summary>
/// A number of a network that is not exactly known: a chance θ with a Beta behind it. A distribution over values is a chain of them,
/// worst value first (a Dirichlet's stick-breaking): of an ordered finding θ(y) = P(y | at most y).
/// </summary>
internal abstract record Parameter
{
    /// <summary>The network with this θ, everything else in proportion.</summary>
    public abstract Network Moved(Network network, double theta);

    /// <summary>θ as the network says it.</summary>
    public abstract double Theta(Network network);

    /// <summary>The distribution with P(value | at most value), or P(value) of a nominal one, moved to θ.</summary>
    protected static ImmutableArray<double> Move(ImmutableArray<double> chances, int value, bool nominal, double theta)
    {
        var within = nominal ? 1 : chances.Take(value + 1).Sum();
        var others = within - chances[value];
        return [.. chances.Select((p, y) => y == value ? within * theta : nominal || y < value ? p * within * (1 - theta) / others : p)];
    }

    protected static double Theta(ImmutableArray<double> chances, int value, bool nominal) =>
        nominal ? chances[value] : chances[value] / chances.Take(value + 1).Sum();
}

/// <summary>P(root in state).</summary>
internal sealed record PriorParameter(int Root, int State) : Parameter
{
    public override double Theta(Network network) => network.Roots[Root].Prior[State];

    public override Network Moved(Network network, double theta)
    {
        var root = network.Roots[Root];
        return network with { Roots = network.Roots.SetItem(Root, root with { Prior = Move(root.Prior, State, true, theta) }) };
    }
}

/// <summary>P(value without any cause), of one finding.</summary>
internal sealed record AmbientParameter(int Finding, int Value) : Parameter
{
    public override double Theta(Network network) => Theta(network.Findings[Finding].Ambient, Value, network.Findings[Finding].Nominal);

    public override Network Moved(Network network, double theta)
    {
        var finding = network.Findings[Finding];
        return network with { Findings = network.Findings.SetItem(Finding, finding with { Ambient = Move(finding.Ambient, Value, finding.Nominal, theta) }) };
    }
}

/// <summary>
/// What a cause produces in a finding. Links that one part of a compound root has in several combinations share their distribution,
/// and are one parameter.
/// </summary>
internal sealed record LinkParameter(int Finding, int Root, ImmutableArray<double> Produces, int Value) : Parameter
{
    public override double Theta(Network network) => Theta(Produces, Value, network.Findings[Finding].Nominal);

    public override Network Moved(Network network, double theta)
    {
        var finding = network.Findings[Finding];
        var moved = Move(Produces, Value, finding.Nominal, theta);
        var links = finding.Links.Select(l => l.Root == Root && l.Produces == Produces ? l with { Produces = moved } : l);
        return network with { Findings = network.Findings.SetItem(Finding, finding with { Links = [.. links] }) };
    }
}
