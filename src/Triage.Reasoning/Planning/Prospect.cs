namespace Triage.Reasoning.Planning;

/// <summary>A state of the search with its cost known from both sides; they close as more is looked at.</summary>
/// <param name="known">What something that can be done from here costs.</param>
/// <param name="least">What nobody can do it for.</param>
internal sealed class Prospect(JobState state, Valuation known, double least)
{
    public JobState State => state;

    public Valuation Known { get; private set; } = known;

    public double Least { get; private set; } = Math.Min(least, known.Cost);

    /// <summary>What may still better it; null until it is looked into.</summary>
    public List<Move>? Moves { get; set; }

    public bool Settled => Known.Cost - Least <= Valuation.Tie * Known.Cost;

    /// <summary>The open move that may cost least.</summary>
    public Move? Promising => Moves!.Where(m => !m.Settled).MinBy(m => m.Least);

    /// <summary>Takes in what became known of the moves and drops those that cannot win.</summary>
    public void Update()
    {
        foreach (var move in Moves!)
        {
            move.Update();
            Known = Known.OrBetter(new Valuation(move.Cost, move.Option));
        }

        Moves.RemoveAll(m => m.Settled || m.Least >= Known.Cost * (1 - Valuation.Tie));
        Least = Moves.Aggregate(Known.Cost, (least, m) => Math.Min(least, m.Least));
    }
}

/// <summary>An option in a state: its price and the states it may lead to.</summary>
internal sealed class Move(int option, double price, (double Chance, Prospect Next)[] outcomes)
{
    public int Option => option;

    public double Cost { get; private set; }

    public double Least { get; private set; }

    public bool Settled { get; private set; }

    /// <summary>The open outcome that leaves most to be known.</summary>
    public Prospect? Uncertain => outcomes.Where(o => !o.Next.Settled).OrderByDescending(o => o.Chance * (o.Next.Known.Cost - o.Next.Least)).Select(o => o.Next).FirstOrDefault();

    public void Update()
    {
        (Cost, Least, Settled) = (price, price, true);
        foreach (var (chance, next) in outcomes)
        {
            Cost += chance * next.Known.Cost;
            Least += chance * next.Least;
            Settled &= next.Settled;
        }
    }
}
