using System.CommandLine;
using Triage.Cli.Typed;
using Triage.Notes.Kinds;

namespace Triage.Cli.Commands;

/// <summary>What the owner agrees to, as options.</summary>
internal sealed class ConsentOptions
{
    private readonly Option<double?> spend = Inputs.Number("--spend", "Most that the owner will pay.");
    private readonly Option<YesNo?> mayErase = Inputs.OptionalChoice<YesNo>("--may-erase", "May stored data be erased?");
    private readonly Option<YesNo?> originalsBack = Inputs.OptionalChoice<YesNo>("--originals-back", "Are old parts wanted back?");

    public IEnumerable<Option> All => [spend, mayErase, originalsBack];

    public bool Given(Session session) => session.Get(spend) is not null || session.Get(mayErase) is not null || session.Get(originalsBack) is not null;

    /// <summary>What was said before, changed by what is said now.</summary>
    public Consent Over(Consent before, Session session) =>
        new(session.Get(spend) ?? before.SpendingLimit, session.Get(mayErase).IsYes() ?? before.MayErase, session.Get(originalsBack).IsYes() ?? before.OriginalsBack);
}
