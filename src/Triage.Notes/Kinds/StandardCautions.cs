namespace Triage.Notes.Kinds;

/// <summary>
/// Standard words for each hazard. They come before the step, and give way to local codes and to licensed practice.
/// Common practice, no source.
/// </summary>
public static class StandardCautions
{
    public static Caution Of(Hazard hazard) => new(hazard, Words(hazard)) { HandOver = NeedsLicence(hazard) };

    private static bool NeedsLicence(Hazard hazard) => hazard is Hazard.PictureTube or Hazard.MicrowaveHighVoltage or Hazard.Asbestos;

    private static string Words(Hazard hazard) => hazard switch
    {
        Hazard.Other => "Take care. Local codes and licensed practice come first.",
        Hazard.Mains => "Mains can kill. Unplug before opening; a chassis may be live. Work on live mains only where local codes allow "
            + "you to, through an isolating transformer and a residual-current device, never alone; otherwise hand over to someone licensed.",
        Hazard.StoredCharge => "Capacitors hold charge after the plug is out. Discharge through a resistor, then measure that none is left, "
            + "before you touch. Where local codes or licensed practice say more, follow them.",
        Hazard.PictureTube => "A picture tube holds tens of kilovolts for days, and bursts inwards when knocked. Leave it alone and hand over "
            + "to someone licensed.",
        Hazard.MicrowaveHighVoltage => "The high-voltage side of a microwave oven kills, also unplugged. Do not open it; hand over to someone licensed.",
        Hazard.LithiumCell => "A dented, swollen or hot lithium cell can burn. Do not charge, bend or pierce it; take it outdoors, away from "
            + "anything that burns, and dispose of it as local rules say.",
        Hazard.LeakedElectrolyte => "Leaked electrolyte burns skin and eyes. Gloves and goggles on; keep crust off food and wounds; wash hands after.",
        Hazard.Lead => "Solder and old glass may hold lead. Ventilate, do not eat at the bench, wash hands after.",
        Hazard.Mercury => "Lamps, switches and old cells may hold mercury. Do not break them; if one breaks, air the room, do not vacuum, and follow local rules.",
        Hazard.Asbestos => "Old heat shields may hold asbestos. Do not touch, cut or brush it; hand over to someone licensed.",
        Hazard.Laser => "Optical drives hold a laser that you may not see. Never look in while it is powered; keep its covers on.",
        Hazard.Hot => "Parts stay hot after power is off. Let them cool, or use tools.",
        Hazard.Moving => "Belts, fans and mechanisms catch fingers, hair and sleeves. Power off before you reach in.",
        Hazard.DataLoss => "Stored data goes. Save it first, or have the owner's word that it may go.",
    };
}
