/**
 * The latitude of each time zone's own place, in whole degrees, south below zero. Source: zone.tab of the time zone database of IANA
 * (public domain), with names that it had before.
 */
const PLACES: Readonly<Record<string, string>> = {
  Africa: [
    'Abidjan 5, Accra 6, Addis_Ababa 9, Algiers 37, Asmara 15, Asmera 15, Bamako 13, Bangui 4, Banjul 13, Bissau 12,',
    'Blantyre -16, Brazzaville -4, Bujumbura -3, Cairo 30, Casablanca 34, Ceuta 36, Conakry 10, Dakar 15,',
    'Dar_es_Salaam -7, Djibouti 12, Douala 4, El_Aaiun 27, Freetown 8, Gaborone -25, Harare -18, Johannesburg -26,',
    'Juba 5, Kampala 0, Khartoum 16, Kigali -2, Kinshasa -4, Lagos 6, Libreville 0, Lome 6, Luanda -9, Lubumbashi',
    '-12, Lusaka -15, Malabo 4, Maputo -26, Maseru -29, Mbabane -26, Mogadishu 2, Monrovia 6, Nairobi -1, Ndjamena',
    '12, Niamey 14, Nouakchott 18, Ouagadougou 12, Porto-Novo 6, Sao_Tome 0, Tripoli 33, Tunis 37, Windhoek -23',
  ].join(' '),
  America: [
    'Adak 52, Anchorage 61, Anguilla 18, Antigua 17, Araguaina -7, Argentina/Buenos_Aires -35, Argentina/Catamarca',
    '-28, Argentina/Cordoba -31, Argentina/Jujuy -24, Argentina/La_Rioja -29, Argentina/Mendoza -33,',
    'Argentina/Rio_Gallegos -52, Argentina/Salta -25, Argentina/San_Juan -32, Argentina/San_Luis -33,',
    'Argentina/Tucuman -27, Argentina/Ushuaia -55, Aruba 12, Asuncion -25, Atikokan 49, Coral_Harbour 49, Bahia -13, Bahia_Banderas 21,',
    'Barbados 13, Belem -1, Belize 18, Blanc-Sablon 51, Boa_Vista 3, Bogota 5, Boise 44, Buenos_Aires -35,',
    'Cambridge_Bay 69, Campo_Grande -20, Cancun 21, Caracas 10, Catamarca -28, Cayenne 5, Cayman 19, Chicago 42,',
    'Chihuahua 29, Ciudad_Juarez 32, Cordoba -31, Costa_Rica 10, Coyhaique -46, Creston 49, Cuiaba -16, Curacao 12,',
    'Danmarkshavn 77, Dawson 64, Dawson_Creek 56, Denver 40, Detroit 42, Dominica 15, Edmonton 54, Eirunepe -7,',
    'El_Salvador 14, Fort_Nelson 59, Fortaleza -4, Glace_Bay 46, Godthab 64, Goose_Bay 53, Grand_Turk 21, Grenada 12,',
    'Guadeloupe 16, Guatemala 15, Guayaquil -2, Guyana 7, Halifax 45, Havana 23, Hermosillo 29, Indiana/Indianapolis',
    '40, Indiana/Knox 41, Indiana/Marengo 38, Indiana/Petersburg 38, Indiana/Tell_City 38, Indiana/Vevay 39,',
    'Indiana/Vincennes 39, Indiana/Winamac 41, Indianapolis 40, Inuvik 68, Iqaluit 64, Jamaica 18, Jujuy -24, Juneau',
    '58, Kentucky/Louisville 38, Kentucky/Monticello 37, Kralendijk 12, La_Paz -16, Lima -12, Los_Angeles 34,',
    'Louisville 38, Lower_Princes 18, Maceio -10, Managua 12, Manaus -3, Marigot 18, Martinique 15, Matamoros 26,',
    'Mazatlan 23, Mendoza -33, Menominee 45, Merida 21, Metlakatla 55, Mexico_City 19, Miquelon 47, Moncton 46,',
    'Monterrey 26, Montevideo -35, Montserrat 17, Nassau 25, New_York 41, Nome 64, Noronha -4, North_Dakota/Beulah',
    '47, North_Dakota/Center 47, North_Dakota/New_Salem 47, Nuuk 64, Ojinaga 30, Panama 9, Paramaribo 6, Phoenix 33,',
    'Port-au-Prince 19, Port_of_Spain 11, Porto_Velho -9, Puerto_Rico 18, Punta_Arenas -53, Rankin_Inlet 63, Recife',
    '-8, Regina 50, Resolute 75, Rio_Branco -10, Santarem -2, Santiago -33, Santo_Domingo 18, Sao_Paulo -24,',
    'Scoresbysund 70, Sitka 57, St_Barthelemy 18, St_Johns 48, St_Kitts 17, St_Lucia 14, St_Thomas 18, St_Vincent 13,',
    'Swift_Current 50, Tegucigalpa 14, Thule 77, Tijuana 33, Toronto 44, Tortola 18, Vancouver 49, Whitehorse 61,',
    'Winnipeg 50, Yakutat 60',
  ].join(' '),
  Antarctica: [
    'Casey -66, Davis -69, DumontDUrville -67, Macquarie -54, Mawson -68, McMurdo -78, Palmer -65, Rothera -68, Syowa',
    '-69, Troll -72, Vostok -78',
  ].join(' '),
  Arctic: ['Longyearbyen 78'].join(' '),
  Asia: [
    'Aden 13, Almaty 43, Amman 32, Anadyr 65, Aqtau 45, Aqtobe 50, Ashgabat 38, Atyrau 47, Baghdad 33, Bahrain 26,',
    'Baku 40, Bangkok 14, Barnaul 53, Beirut 34, Bishkek 43, Brunei 5, Calcutta 23, Chita 52, Colombo 7, Damascus 34,',
    'Dhaka 24, Dili -9, Dubai 25, Dushanbe 39, Famagusta 35, Gaza 32, Hebron 32, Ho_Chi_Minh 11, Hong_Kong 22, Hovd',
    '48, Irkutsk 52, Jakarta -6, Jayapura -3, Jerusalem 32, Kabul 35, Kamchatka 53, Karachi 25, Kathmandu 28,',
    'Katmandu 28, Khandyga 63, Kolkata 23, Krasnoyarsk 56, Kuala_Lumpur 3, Kuching 2, Kuwait 29, Macau 22, Magadan',
    '60, Makassar -5, Manila 15, Muscat 24, Nicosia 35, Novokuznetsk 54, Novosibirsk 55, Omsk 55, Oral 51, Phnom_Penh',
    '12, Pontianak 0, Pyongyang 39, Qatar 25, Qostanay 53, Qyzylorda 45, Rangoon 17, Riyadh 25, Saigon 11, Sakhalin',
    '47, Samarkand 40, Seoul 38, Shanghai 31, Singapore 1, Srednekolymsk 67, Taipei 25, Tashkent 41, Tbilisi 42,',
    'Tehran 36, Thimphu 27, Tokyo 36, Tomsk 56, Ujung_Pandang -5, Ulaanbaatar 48, Urumqi 44, Ust-Nera 65, Vientiane',
    '18, Vladivostok 43, Yakutsk 62, Yangon 17, Yekaterinburg 57, Yerevan 40',
  ].join(' '),
  Atlantic: [
    'Azores 38, Bermuda 32, Canary 28, Cape_Verde 15, Faeroe 62, Faroe 62, Madeira 33, Reykjavik 64, South_Georgia',
    '-54, St_Helena -16, Stanley -52',
  ].join(' '),
  Australia: [
    'Adelaide -35, Brisbane -27, Broken_Hill -32, Darwin -12, Eucla -32, Hobart -43, Lindeman -20, Lord_Howe -32,',
    'Melbourne -38, Perth -32, Sydney -34',
  ].join(' '),
  Europe: [
    'Amsterdam 52, Andorra 42, Astrakhan 46, Athens 38, Belgrade 45, Berlin 52, Bratislava 48, Brussels 51, Bucharest',
    '44, Budapest 48, Busingen 48, Chisinau 47, Copenhagen 56, Dublin 53, Gibraltar 36, Guernsey 49, Helsinki 60,',
    'Isle_of_Man 54, Istanbul 41, Jersey 49, Kaliningrad 55, Kiev 50, Kirov 59, Kyiv 50, Lisbon 39, Ljubljana 46,',
    'London 52, Luxembourg 50, Madrid 40, Malta 36, Mariehamn 60, Minsk 54, Monaco 44, Moscow 56, Oslo 60, Paris 49,',
    'Podgorica 42, Prague 50, Riga 57, Rome 42, Samara 53, San_Marino 44, Sarajevo 44, Saratov 52, Simferopol 45,',
    'Skopje 42, Sofia 43, Stockholm 59, Tallinn 59, Tirane 41, Ulyanovsk 54, Vaduz 47, Vatican 42, Vienna 48, Vilnius',
    '55, Volgograd 49, Warsaw 52, Zagreb 46, Zurich 47',
  ].join(' '),
  Indian: [
    'Antananarivo -19, Chagos -7, Christmas -10, Cocos -12, Comoro -12, Kerguelen -49, Mahe -5, Maldives 4, Mauritius',
    '-20, Mayotte -13, Reunion -21',
  ].join(' '),
  Pacific: [
    'Apia -14, Auckland -37, Bougainville -6, Chatham -44, Chuuk 7, Easter -27, Efate -18, Fakaofo -9, Fiji -18,',
    'Funafuti -9, Galapagos -1, Gambier -23, Guadalcanal -10, Guam 13, Honolulu 21, Enderbury -3, Kanton -3, Kiritimati 2, Kosrae',
    '5, Kwajalein 9, Majuro 7, Marquesas -9, Midway 28, Nauru -1, Niue -19, Norfolk -29, Noumea -22, Pago_Pago -14,',
    'Palau 7, Pitcairn -25, Pohnpei 7, Ponape 7, Port_Moresby -10, Rarotonga -21, Saipan 15, Tahiti -18, Tarawa 1,',
    'Tongatapu -21, Truk 7, Wake 19, Wallis -13',
  ].join(' '),
};

const LATITUDES: ReadonlyMap<string, number> = new Map(
  Object.entries(PLACES).flatMap(([region, places]) =>
    places.split(', ').map((place): [string, number] => {
      const [name = '', degrees] = place.split(' ');
      return [`${region}/${name}`, Number(degrees)];
    }),
  ),
);

/**
 * The latitude of a time zone's own place in degrees; null for a zone of no place, such as UTC.
 *
 * Example: `latitudeOf('Europe/Dublin')` is 53.
 */
export const latitudeOf = (timeZone: string): number | null => {
  const canonical = new Intl.DateTimeFormat('en', { timeZone }).resolvedOptions().timeZone;
  return LATITUDES.get(timeZone) ?? LATITUDES.get(canonical) ?? null;
};
