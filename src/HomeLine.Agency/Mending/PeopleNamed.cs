using HomeLine.Agency.Reports;
using HomeLine.Agency.Roster;
using HomeLine.LineCare.Lines;
using NodaTime;

namespace HomeLine.Agency.Mending;

/// <summary>People to tell, with the way to reach them: the number on record, or whom to ask when there is none.</summary>
internal sealed class PeopleNamed(AgencyAtHand agency)
{
    /// <summary>By when people are told: policy's promise, from now.</summary>
    public Instant Soon { get; } = agency.Now + Duration.FromMinutes((int)agency.Files.Policy.ValueOf("tell.within", agency.Today));

    public PersonToTell Family(PatientId id, string what, Instant? by = null)
    {
        Patient patient = PatientOf(id);
        return new PersonToTell(NameOf(patient), Way(patient), what, by ?? Soon) { Number = patient.Phone };
    }

    public PersonToTell Nurse(string id, string what, Instant? by = null)
    {
        NurseFile? nurse = agency.Roster.Nurses.FirstOrDefault(n => n.Id == id);
        string number = nurse?.Phone ?? "";
        return new PersonToTell(nurse?.Name ?? id, number.Length > 0 ? $"phone {number}" : "no number on record: ask the branch", what, by ?? Soon)
        {
            Number = number,
            Nurse = id,
        };
    }

    public PersonToTell Practitioner(PatientId id, string what, Instant? by = null)
    {
        Patient patient = PatientOf(id);
        return new PersonToTell(patient.Practitioner.Length > 0 ? patient.Practitioner : "Practitioner", "phone, number on the plan of care", what, by ?? Soon);
    }

    public PersonToTell ClinicalManager(string what, Instant? by = null) =>
        new("Clinical manager on duty", $"phone {agency.Roster.Profile.OnCallPhone}", what, by ?? Soon) { Number = agency.Roster.Profile.OnCallPhone };

    public PersonToTell Pharmacist(string what, Instant? by = null) => new("Pharmacist", "phone, number of the pharmacy", what, by ?? Soon);

    public string Name(PatientId id) => PatientOf(id).Name;

    public string NurseName(string id) => agency.Roster.Nurses.FirstOrDefault(n => n.Id == id)?.Name ?? id;

    /// <summary>Somebody else on the record to ask when nobody answers; empty when there is nobody.</summary>
    public string OtherContact(PatientId id)
    {
        Patient patient = PatientOf(id);
        return patient.Contact is { Length: > 0 } and not "self"
            ? patient.Contact
            : agency.Roster.Caregivers.FirstOrDefault(c => c.Patient == id && c.Person is not ("self" or ""))?.Person ?? "";
    }

    private string Way(Patient patient)
    {
        if (patient.Phone.Length > 0) return $"phone {patient.Phone}";
        string other = OtherContact(patient.Id);
        return other.Length > 0
            ? $"no number on record: reach them through the {other}, or send the nurse's word"
            : "no number and no other contact on record: ask the clinical manager how to reach them";
    }

    private static string NameOf(Patient patient) =>
        patient.Contact is { Length: > 0 } and not "self" ? $"{patient.Name} ({patient.Contact})" : patient.Name;

    private Patient PatientOf(PatientId id) => agency.Roster.Patients.First(p => p.Id == id);
}
