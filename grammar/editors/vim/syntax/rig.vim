" Written by grammar/editors/derive.py from grammar/rig.lark.
if exists("b:current_syntax")
  finish
endif
syntax case match
syntax iskeyword @,48-57,-
syntax sync minlines=1
syntax match rigName /\v<[a-z][a-z0-9]*%(-[a-z0-9]+)*>/
syntax match rigMark /\v<[A-Z][A-Z0-9]*[a-z]?>/
syntax match rigUnit /\v%(x[ \t]*[0-9+-]|%(reverse-protected|double-insulated|centre-negative|centre-positive|non-inverting|battery-door|capacitance|mains-strip|reverse-log|sensitivity|switch-mode|transformer|unregulated|base-label|characters|conductors|deliberate|efficiency|expression|field-note|headphones|inductance|instrument|insulating|microphone|resistance|ring-wiper|all-units|always-on|clearance|conductor|connector|converted|crossover|impedance|insulated|mini-jack|momentary|reversing|thickness|tip-wiper|unpowered|analogue|as-built|balanced|brackets|buffered|bypassed|dry-kill|feedback|firmware|inverted|isolated|keep-out|keyboard|language|latching|listener|measured|mini-trs|mounting|negative|parallel|polarity|positive|programs|reversed|revision|scenario|selector|soldered|splitter|straight|stranded|textured|unwanted|wireless|accepts|airline|allowed|assumed|battery|because|bridged|captive|carries|ceiling|channel|checked|contact|control|country|digital|doubles|earthed|expects|follows|gigging|insured|inverts|latches|latency|leaflet|pairing|passive|phantom|premade|program|removed|reserve|retired|screwed|sockets|speaker|through|touches|touring|treadle|unknown|version|voltage|winding|accept|active|barrel|before|bolted|bonded|buffer|bypass|change|client|closed|colour|common|cut-in|cycles|design|factor|fitted|folded|frozen|ground|insert|inside|itself|jacket|leaves|lifted|linear|lowest|marker|master|middle|oclock|origin|others|outlet|output|passes|pickup|preset|raised|return|reverb|screen|screws|serial|series|shared|shield|silent|source|spares|stands|starts|stereo|studio|supply|switch|tinned|trails|tuning|turned|volume|wanted|within|worked|alone|angle|audio|bears|blend|cable|chain|class|clock|delay|drawn|draws|empty|every|faces|facts|floor|front|gives|holds|inlet|input|jacks|label|lasts|leads|level|limit|loops|lower|mains|mates|metal|minus|mutes|needs|never|order|outer|owner|panel|place|plain|plugs|poles|power|price|reach|reads|relay|right|rules|sends|share|shows|slack|solid|spare|stock|strip|tails|tempo|tests|total|track|under|until|vents|wants|amps|band|bare|base|bend|body|both|case|core|deck|desk|done|drop|ends|feet|fits|flat|foot|from|gain|hand|heel|high|hole|home|into|jack|join|knob|lane|lead|left|lift|like|line|load|loop|made|mass|midi|mute|none|note|only|open|opto|over|pair|path|peak|plug|pull|rail|rear|ring|roll|seal|send|show|size|snap|song|stay|stop|swap|tall|tape|test|thru|tier|tone|trim|true|type|unit|vent|warm|wide|with|all|amp|and|cut|din|dry|fly|for|gap|lid|log|max|may|off|out|rig|row|set|tie|tip|trs|usb|use|was|wet|xlr|ac|at|by|dc|in|of|on|or|to|ts|up|a|b)>)@![A-Za-zµμΩ°%\/]+[23]?/ contained
syntax match rigNumber /\v[+-]?\d+%(\.\d+)?/ nextgroup=rigUnit skipwhite
syntax match rigDate /\v\d{4}-\d{2}-\d{2}/
syntax match rigSign /\v-\>|\=\>|\.\.|\+-|\+\/-|±|x\ze[ \t]*[0-9+-]/
syntax keyword rigValue a ac airline allowed always-on analogue assumed at
syntax keyword rigValue audio b balanced base-label battery-door bears bolted bonded
syntax keyword rigValue both brackets buffer buffered by centre-negative centre-positive closed
syntax keyword rigValue contact converted crossover cut dc delay deliberate design
syntax keyword rigValue digital din double-insulated doubles dry-kill earthed ends facts
syntax keyword rigValue flat fly folded foot front gigging gives hand
syntax keyword rigValue high home in insert insulated inverted inverts itself
syntax keyword rigValue keyboard latches latching leaflet left lifted line linear
syntax keyword rigValue load log made measured microphone middle mini-jack mini-trs
syntax keyword rigValue momentary mutes negative never non-inverting none only open
syntax keyword rigValue opto out over pairing parallel passes passive pickup
syntax keyword rigValue positive rear relay removed reverb reverse-log reverse-protected reversed
syntax keyword rigValue reversing right ring ring-wiper rules screwed screws sends
syntax keyword rigValue series shared shield silent snap solid speaker splitter
syntax keyword rigValue stay stereo stock stop straight stranded studio switch-mode
syntax keyword rigValue tails textured thru tinned tip tip-wiper total touring
syntax keyword rigValue trails trim trs true ts under unknown unregulated
syntax keyword rigValue unwanted vent voltage wanted wants winding wireless worked
syntax keyword rigValue xlr
syntax keyword rigWord accept accepts active all amps angle band bare
syntax keyword rigWord barrel base battery bend body bypass capacitance captive
syntax keyword rigWord carries ceiling chain change checked class clearance client
syntax keyword rigWord clock colour common conductor conductors connector core country
syntax keyword rigWord cut-in done drawn draws drop dry efficiency every
syntax keyword rigWord expression feedback feet field-note firmware fits fitted floor
syntax keyword rigWord follows frozen gain ground headphones heel holds hole
syntax keyword rigWord impedance inductance inlet input inside insulating insured isolated
syntax keyword rigWord jack join keep-out knob label lane language lasts
syntax keyword rigWord latency lead leaves level lid lift limit loop
syntax keyword rigWord loops lowest mains marker mass master mates minus
syntax keyword rigWord mute needs note off on order origin others
syntax keyword rigWord outer outlet output owner pair path phantom plain
syntax keyword rigWord polarity poles premade price program pull rail reserve
syntax keyword rigWord resistance retired revision roll selector serial set show
syntax keyword rigWord size slack sockets soldered spare stands starts swap
syntax keyword rigWord switch tall tempo test thickness tie tier to
syntax keyword rigWord tone track transformer treadle tuning turned type unpowered
syntax keyword rigWord usb use vents version volume warm was wet
syntax keyword rigWord wide alone and because before bridged bypassed channel
syntax keyword rigWord characters cycles empty expects faces factor for from
syntax keyword rigWord gap into jacket jacks like lower max may
syntax keyword rigWord metal oclock of or peak plugs programs raised
syntax keyword rigWord reach reads return row screen seal send sensitivity
syntax keyword rigWord share shows tape through touches until up with
syntax keyword rigWord within
syntax keyword rigBlock all-units amp as-built blend cable case control deck
syntax keyword rigBlock desk instrument leads listener mains-strip midi mounting panel
syntax keyword rigBlock place plug power preset rig scenario song source
syntax keyword rigBlock spares strip supply tests unit
syntax match rigJack /\v\.%([a-z][a-z0-9]*%(-[a-z0-9]+)*)>/
syntax match rigHead /\v%(^|\{)@1<=\s*%(mains-strip|instrument|impedance|feedback|listener|scenario|selector|phantom|accept|common|master|outlet|output|source|supply|blend|cable|holds|inlet|input|level|order|panel|strip|amps|case|deck|desk|jack|join|lift|mute|pair|path|plug|swap|tier|unit|amp|off|rig|set|usb|was|on)>/ contains=rigWord nextgroup=rigNamed skipwhite
syntax match rigNamed /\v<[a-z][a-z0-9]*%(-[a-z0-9]+)*>/ contained
syntax region rigText start=/"/ skip=/\\./ end=/"/ oneline
syntax match rigComment /#.*/ contains=@Spell
highlight default link rigName Identifier
highlight default link rigNamed Identifier
highlight default link rigHead Statement
highlight default link rigJack Special
highlight default link rigMark Label
highlight default link rigUnit Type
highlight default link rigNumber Number
highlight default link rigDate Number
highlight default link rigSign Operator
highlight default link rigValue Constant
highlight default link rigWord Statement
highlight default link rigBlock Structure
highlight default link rigText String
highlight default link rigComment Comment
let b:current_syntax = "rig"
