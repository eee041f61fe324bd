using Triage.Notes.Kinds;

namespace MadeUpJobs;

/// <summary>What one of the workshop's people does with a machine, line by line, until it works or is given up.</summary>
internal sealed class Evening(SickMachine machine, Technician who, Clock clock, Random random)
{
    private readonly List<LogEntry> log = [];
    private readonly List<string> open = [];
    private bool measured;

    public IReadOnlyList<LogEntry> Log => log;

    public double Minutes { get; private set; }

    /// <summary>The mend that made it work; null when none did.</summary>
    public Mend? Cure { get; private set; }

    public bool Held { get; private set; }

    public Grade Grade => measured ? Grade.Measured : Held ? Grade.Swapped : Grade.HoldUnknown;

    /// <summary>What the owner said comes first, then checks outside, a reset, checks inside, a wrong idea perhaps, the mend.</summary>
    public void Work(IReadOnlyList<Finding> told)
    {
        foreach (var finding in told)
            Spent(1, at => Saw(at, finding));
        Check(t => t.Effort.Access is null);
        TryReset();
        if (random.Happens(who.Misled) && WrongIdea() is { } wrong)
            Do(wrong, clears: 0);
        if (Mends(machine.Cause).FirstOrDefault() is { Effort.Access: not null } inside)
            Open(inside.Effort.Access);
        Check(t => t.Effort.Access is { } access && open.Contains(access));
        foreach (var mend in Mends(machine.Cause))
        {
            foreach (var damage in machine.Damage.SelectMany(Mends).Take(1))
                Do(damage, clears: 0);
            if (Do(mend, mend.Works.Probability))
            {
                Cure = mend;
                Recheck(told, mend.Id);
                break;
            }
        }

        ShutUp();
    }

    /// <summary>Swaps and real mends of a fault that this bench may do, likeliest first.</summary>
    private IEnumerable<Mend> Mends(Fault fault) =>
        fault.Mends.Where(m => m.Name is not null && m.Effort.Cautions.All(c => !c.HandOver)).OrderByDescending(m => m.Works.Probability).Take(2);

    private void Check(Func<Test, bool> where)
    {
        var telling = machine.Cause.Shows.Select(s => s.Finding).ToHashSet();
        var roles = machine.Faults.Select(f => f.Role).ToHashSet();
        bool Matters(Test t) => telling.Contains(t.Reveals ?? "") || (t.MeasuresRole is { } role && roles.Contains(role));
        var tests = random.Shuffled(machine.Scope.Tests.Where(t => where(t) && t.Effort.Cautions.All(c => !c.HandOver)))
            .Where(t => random.Happens(Matters(t) ? who.Looks : who.Looks * 0.12))
            .OrderBy(t => t.Effort.Power).ThenBy(t => t.Way);
        foreach (var test in tests)
        {
            if (machine.Outcome(test, random) is not { } outcome || log.OfType<Saw>().Any(s => s.Finding == test.Reveals))
                continue;
            var odd = test.Reveals is null ? outcome != test.Outcomes[0].Id : machine.IsOdd(machine.Scope.Findings.First(f => f.Id == test.Reveals));
            if (!odd && !random.Happens(who.WritesNormal))
                continue;
            measured |= test.MeasuresRole is { } role && role == machine.Cause.Role && random.Happens(who.Confirms);
            Spent(test.Effort.Minutes, at => new Tested(at, test.Id, outcome));
        }
    }

    private void TryReset()
    {
        var resets = machine.Scope.Resets.Where(r => r.Effort.Access is null).ToList();
        if (resets.Count == 0 || !random.Happens(0.35))
            return;
        var reset = random.Any(resets);
        var clears = reset.Clears.FirstOrDefault(c => c.Fault == machine.Cause.Id);
        var works = clears is not null && random.Happens(clears.Works.Probability);
        Spent(reset.Effort.Minutes, at => new ResetTried(at, reset.Id, works ? Effect.Works : Effect.NoChange));
        if (!works || !random.Happens(0.8))
            return;
        var holds = random.Happens(clears!.Holds.Probability);
        Spent(10, at => new Held(at, reset.Id, holds, "power-loss"));
    }

    /// <summary>The mend of another fault that shows the same.</summary>
    private Mend? WrongIdea()
    {
        var odd = machine.Scope.Findings.Where(machine.IsOdd).Select(f => f.Id).ToHashSet();
        var alike = machine.Scope.Faults.Except(machine.Faults)
            .Where(f => f.Shows.Any(s => odd.Contains(s.Finding)))
            .SelectMany(Mends).Where(m => m.Id is not null && machine.Cause.Mends.All(own => own.Id != m.Id)).ToList();
        return alike.Count == 0 ? null : random.Any(alike);
    }

    private bool Do(Mend mend, double clears)
    {
        Open(mend.Effort.Access);
        if (mend.Needs is { } part && random.Happens(0.7))
            Fetch(part, mend.Effort);
        var works = random.Happens(clears);
        var tested = mend.Needs is not null && random.Happens(who.TriesOut);
        Spent(mend.Effort.Minutes, at => mend.Swap
            ? new Swapped(at, mend.Needs ?? machine.Cause.Role ?? mend.Id, mend.Id, works ? Effect.Works : Effect.NoChange, works && random.Happens(who.Confirms) ? true : null)
            : new Fixed(at, mend.Id, works ? Effect.Works : Effect.NoChange) { TestedBefore = tested ? true : null });
        // the old part on the tester, once it is out
        measured |= log[^1] is Swapped { OldBack: true } || (works && mend.Needs is not null && random.Happens(who.Confirms));
        return works;
    }

    private void Fetch(string part, Effort effort)
    {
        var price = Math.Round(Math.Max(0.5, effort.Money * random.Around(0.3)), 1);
        if (random.Happens(0.3))
        {
            Spent(2, at => new PartMoved(at, part, PartState.Needed) { Note = "from the drawer" });
            return;
        }

        var days = Math.Max(1, Math.Round(Math.Max(effort.WaitDays, 4) * random.Around(0.4)));
        Spent(4, at => new PartMoved(at, part, PartState.Ordered) { Price = price, Shipping = random.Any([3.9, 4.8, 5.9, 6.4]), LeadDays = days });
        clock.NextDay(days);
        Spent(2, at => new PartMoved(at, part, PartState.Arrived));
        if (random.Happens(who.TriesOut))
            Spent(6, at => new PartMoved(at, part, PartState.TestedGood));
    }

    private void Recheck(IReadOnlyList<Finding> told, string mend)
    {
        foreach (var finding in told.Where(f => machine.IsOdd(f) && IsSeen(f) && random.Happens(who.WritesNormal)))
            Spent(1, at => new Saw(at, finding.Id, finding.Values[0].Id) { When = When(finding) });
        if (!random.Happens(who.Soaks))
            return;
        if (random.Happens(0.5))
            clock.NextDay(random.Next(1, 8));
        Held = true;
        Spent(10, at => new Held(at, mend, true, random.Any(["soak", "soak", "power-loss", "days"])));
    }

    /// <summary>What is only asked for stays as it was told: a machine that was dropped stays one that was dropped.</summary>
    private bool IsSeen(Finding finding) => machine.Scope.Tests.Any(t => t.Reveals == finding.Id && t.Way is (TestWay.Look or TestWay.Listen));

    private void Open(string? step)
    {
        if (step is null || open.Contains(step))
            return;
        var access = machine.Scope.Access.FirstOrDefault(a => a.Id == step);
        Open(access?.Behind);
        open.Add(step);
        Spent((access?.Minutes ?? 10) * 0.6, at => new Opened(at, step, false));
        if (random.Happens(0.35))
            Spent(1, at => new TakenOff(at, Remarks.Fastener(random), Remarks.Place(random), false));
    }

    private void ShutUp()
    {
        foreach (var off in log.OfType<TakenOff>().ToList())
            Spent(1, at => new TakenOff(at, off.What, null, true));
        if (open.Count > 0)
            Spent(6, at => new Opened(at, open[0], true));
    }

    private Saw Saw(DateTimeOffset at, Finding finding) => new(at, finding.Id, machine.Shown[finding.Id]) { When = machine.IsOdd(finding) ? When(finding) : [] };

    private System.Collections.Immutable.ImmutableArray<string> When(Finding finding) =>
        machine.Faults.SelectMany(f => f.Shows).FirstOrDefault(s => s.Finding == finding.Id)?.When ?? [];

    private void Spent(double minutes, Func<DateTimeOffset, LogEntry> entry)
    {
        var took = Math.Max(1, minutes * random.Around(0.25));
        Minutes += took;
        log.Add(entry(clock.After(took)));
    }
}
