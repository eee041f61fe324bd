using Triage.Notes.Kinds;

namespace Triage.Workshop.Steps;

internal static class PartCheck
{
    public static Refusal? Refuses(PartMoved moved) =>
        string.IsNullOrWhiteSpace(moved.Part) ? WorkshopRefusals.NothingSaid("part")
        : moved.Price < 0 ? WorkshopRefusals.Negative("price", moved.Price.Value)
        : moved.Shipping < 0 ? WorkshopRefusals.Negative("shipping", moved.Shipping.Value)
        : moved.LeadDays < 0 ? WorkshopRefusals.Negative("lead time", moved.LeadDays.Value)
        : null;
}
